import type { ReleasedTable } from "../../release/release-table";
import { isoInWords } from "../../release/words/days";
import { ruleInWords } from "../../release/words/rule-words";
import type { WordsContext } from "../../release/words/words-context";
import { TOOL_NAME } from "../report";
import { BAR_KINDS } from "./bar-kinds";
import { barsOf, type PictureBar } from "./picture-bars";

/** One picture before it is drawn. */
export interface Picture {
  /** `met-by-band`, or `met-by-band-2` where a table takes more than one. */
  readonly name: string;
  readonly title: string;
  /** Population, day, rule: a picture travels alone. */
  readonly below: readonly string[];
  /** Every bar in words, for someone who does not see it. */
  readonly altText: string;
  readonly axis: string;
  readonly end: number;
  readonly panels: readonly { readonly title: string; readonly bars: readonly PictureBar[] }[];
}

/** The pictures of a table: none where it cannot be drawn, several where it has more panels than a page holds. */
export function picturesOf(table: ReleasedTable, context: WordsContext): Picture[] {
  const kind = Object.hasOwn(BAR_KINDS, table.id) ? BAR_KINDS[table.id] : undefined;
  if (!kind) return [];
  const bars = barsOf(table, kind, context);
  const largest = Math.max(1, ...bars.flatMap(({ to, upper }) => [to ?? 0, upper ?? 0]));
  const pages = pagesOf(panelsOf(bars));
  return pages.map((panels, page) => ({
    name: pages.length === 1 ? table.id : `${table.id}-${page + 1}`,
    title: `${table.title}, as of ${isoInWords(context.asOf)}`,
    below: [
      `${table.population}.`,
      ruleInWords(context.rule),
      "Hatched, with *: held back under the rule; it may be any share or count.",
    ],
    altText: altTextOf(table, panels, context),
    axis: kind.axis,
    end: kind.end ?? largest,
    panels,
  }));
}

type Panels = Picture["panels"];

/** Bars of one picture: more, and its print becomes too small. */
const BARS_A_PAGE = 90;

function panelsOf(bars: readonly PictureBar[]): Panels {
  const titles = [...new Set(bars.map(({ panel }) => panel))];
  return titles.map((title) => ({ title, bars: bars.filter(({ panel }) => panel === title) }));
}

function pagesOf(panels: Panels): Panels[] {
  const pages: Panels[number][][] = [];
  let room = 0;
  for (const panel of panels) {
    if (pages.length === 0 || panel.bars.length > room) {
      pages.push([]);
      room = BARS_A_PAGE;
    }
    pages.at(-1)?.push(panel);
    room -= panel.bars.length;
  }
  return pages;
}

function altTextOf({ title, population }: ReleasedTable, panels: Panels, context: WordsContext): string {
  const said = panels.map(({ title: panel, bars }) => {
    const each = bars.map(({ label, words }) => `${label}: ${words}`).join("; ");
    return panel === "" ? `${each}.` : `${panel}: ${each}.`;
  });
  return `${title}, as of ${isoInWords(context.asOf)}. ${population}. ${said.join(" ")} ${ruleInWords(context.rule)} Drawn by ${TOOL_NAME}.`;
}
