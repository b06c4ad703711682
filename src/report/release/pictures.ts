import type { ReleasedTable } from "../../release/release-table";
import { isoInWords } from "../../release/words/days";
import { ruleInWords } from "../../release/words/rule-words";
import type { ReleasedReader, ReleasedRow } from "../../release/words/read-released";
import { leadingSentence, type RowSentence, sentencesOf } from "../../release/words/sentences";
import type { WordsContext } from "../../release/words/words-context";
import { TABLE_CATALOGUE } from "../../tables/catalogue";
import { ALL_SKILLS } from "../sheets/read-table";
import { plural } from "../../words/numbers";
import { ANSWER_KINDS, BAR_KINDS, type BarKind } from "./bar-kinds";
import { barsOf, type PictureBar } from "./picture-bars";

/** One picture before it is drawn. It fits a letter page. */
export interface Picture {
  /** `met-by-band`, or `met-by-band-2` where a table takes more than one. */
  readonly name: string;
  /** The finding, as a sentence. */
  readonly title: string;
  /** Who is counted, when, and the rule: a picture travels alone. */
  readonly below: readonly string[];
  /** A few words for someone who does not see it. */
  readonly altText: string;
  readonly axis: string;
  readonly end: number;
  readonly panels: readonly PicturePanel[];
}

export interface PicturePanel {
  readonly title: string;
  readonly bars: readonly PictureBar[];
  /** `Held back: 0 to <3 months, 3 to <6 months.`; "" where nothing is. */
  readonly heldBack: string;
}

/** The pictures of a table: none where it cannot be drawn or shows nothing, several where it is taller than a page. */
export function picturesOf(table: ReleasedTable, context: WordsContext): Picture[] {
  const kind = Object.hasOwn(BAR_KINDS, table.id) ? BAR_KINDS[table.id] : undefined;
  return kind ? drawnAs({ name: table.id, table, kind, said: sentencesOf(table, context) }, context) : [];
}

/** The pictures of the questions that a release was asked: each is about the figures that answer it, and no others. */
export function answerPictures(tables: readonly ReleasedTable[], context: WordsContext): Picture[] {
  return (context.answered ?? []).flatMap(({ id, table: asked, figures }) => {
    const table = tables.find((each) => each.id === asked);
    if (!table) return [];
    const rows = new Set(figures.flatMap((figure) => figure.rows.map((row) => table.rows[row])));
    const isPictured = (read: ReleasedReader, row: ReleasedRow) =>
      rows.has(row) &&
      (context.pictured === undefined || ["", ALL_SKILLS, ...context.pictured].includes(read.text(row, "skill")));
    const kind = { ...(ANSWER_KINDS[id] ?? BAR_KINDS[table.id]), rows: isPictured };
    const said = figures.flatMap(({ sentence, rows: own }) =>
      sentence === null ? [] : [{ text: sentence, row: own.at(-1)! }],
    );
    return drawnAs({ name: `answer-${id}`, table, kind, said }, context);
  });
}

interface Drawing {
  readonly name: string;
  readonly table: ReleasedTable;
  readonly kind: BarKind;
  /** The sentences that may be its title. */
  readonly said: readonly RowSentence[];
}

function drawnAs({ name, table, kind, said }: Drawing, context: WordsContext): Picture[] {
  const all = barsOf(table, kind, context);
  const bars = all.filter(({ state }) => state !== "held back");
  if (bars.length === 0) return [];
  const largest = Math.max(1, ...bars.flatMap(({ to, upper }) => [to ?? 0, upper ?? 0]));
  const pages = pagesOf(panelsOf(all));
  return pages.map((panels, page) => {
    const title = findingOf(table, panels, said, context);
    return {
      name: pages.length === 1 ? name : `${name}-${page + 1}`,
      title,
      below: [`${table.population}. ${when(table, context)}`, ruleInWords(context.rule)],
      altText: altTextOf(title, panels),
      axis: kind.axis,
      end: kind.end ?? largest,
      panels,
    };
  });
}

/** What the rows of this picture say first, or what the table is where none of them can be said. */
function findingOf(
  table: ReleasedTable,
  panels: readonly PicturePanel[],
  said: readonly RowSentence[],
  context: WordsContext,
): string {
  const rows = new Set(panels.flatMap(({ bars }) => bars.map(({ row }) => row)));
  const own = said.filter(({ row }) => rows.has(row));
  const finding = leadingSentence(table, context, own)?.replaceAll(
    /; \d+(?:\.\d+)?% confidence interval [^)]*\)/g,
    ")",
  );
  return finding ?? `${table.title}, as of ${isoInWords(context.asOf)}`;
}

function when({ id }: ReleasedTable, { from, asOf }: WordsContext): string {
  return TABLE_CATALOGUE[id].when === "at a date"
    ? `As of ${isoInWords(asOf)}.`
    : `${isoInWords(from)} to ${isoInWords(asOf)}.`;
}

/** Lines of bars on a page; the title of a panel and its line of what is held back take room too. */
const LINES_A_PAGE = 34;
const LINES_OF_HEAD = 2;

function panelsOf(bars: readonly PictureBar[]): PicturePanel[] {
  const titles = [...new Set(bars.map(({ panel }) => panel))];
  return titles.flatMap((title) => {
    const own = bars.filter(({ panel }) => panel === title);
    const heldBack = own.filter(({ state }) => state === "held back").map(({ label }) => label);
    const shown = own.filter(({ state }) => state !== "held back");
    const pieces = chunks(shown, LINES_A_PAGE - 2 * LINES_OF_HEAD);
    const last = Math.max(0, pieces.length - 1);
    return (pieces.length === 0 ? [[]] : pieces).map((piece, at) => ({
      title: at === 0 ? title : `${title}${title === "" ? "" : ", "}continued`,
      bars: piece,
      heldBack: at === last ? heldBackLine(heldBack) : "",
    }));
  });
}

function chunks<T>(all: readonly T[], size: number): T[][] {
  return Array.from({ length: Math.ceil(all.length / size) }, (_, at) => all.slice(at * size, (at + 1) * size));
}

const NAMED_AT_MOST = 6;

function heldBackLine(labels: readonly string[]): string {
  if (labels.length === 0) return "";
  const unique = [...new Set(labels)];
  return unique.length <= NAMED_AT_MOST
    ? `Held back: ${unique.join("; ")}.`
    : `Held back: ${plural(labels.length, "figure", "figures")}.`;
}

function pagesOf(panels: readonly PicturePanel[]): PicturePanel[][] {
  const pages: PicturePanel[][] = [];
  let room = 0;
  for (const panel of panels) {
    const needed = panel.bars.length + (panel.title === "" ? 0 : LINES_OF_HEAD) + (panel.heldBack === "" ? 0 : 1);
    if (pages.length === 0 || needed > room) {
      pages.push([]);
      room = LINES_A_PAGE;
    }
    pages.at(-1)?.push(panel);
    room -= needed;
  }
  return pages.filter((page) => page.some(({ bars }) => bars.length > 0));
}

function altTextOf(title: string, panels: readonly PicturePanel[]): string {
  const bars = panels.reduce((sum, panel) => sum + panel.bars.length, 0);
  const held = panels.some(({ heldBack }) => heldBack !== "")
    ? " Some figures are held back and named below the bars."
    : "";
  return `Bar chart. ${title} ${plural(bars, "bar", "bars")}, each with its numbers.${held}`;
}
