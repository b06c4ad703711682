import { TABLE_CATALOGUE } from "../../tables/catalogue";
import type { ReleasableId } from "../../tables/table";
import { counted, listed, plural } from "../../words/numbers";
import { questionOfTable } from "../answers/questions";
import type { Ledger } from "../ledger";
import type { LedgerEntryBody } from "../ledger-entry";
import type { PreparedRelease } from "../prepared";
import { edgesIn, groupColumns } from "../ties/not-covered";
import { isoInWords } from "./days";
import type { WordsContext } from "./words-context";

/** One line a release, in the order in which they were made: what was released, for when, under which rule. */
export function ledgerInWords({ entries }: Ledger): string[] {
  return entries.map(({ body, hash }, at) => `${at + 1}. ${entryInWords(body)} Hash begins ${hash.slice(0, 8)}.`);
}

function entryInWords(entry: LedgerEntryBody): string {
  const { asOf, from, tables, rule, cells, definition } = entry;
  const names = tables.map((id) =>
    Object.hasOwn(TABLE_CATALOGUE, id) ? TABLE_CATALOGUE[id as ReleasableId].name : id,
  );
  const by = groupColumns(definition);
  const edges = edgesIn(definition);
  const cut = [
    ...(by.length === 0 ? [] : [`by ${listed(by)}`]),
    ...(edges === null ? [] : [`ages cut at ${edges.join(", ")} months`]),
  ];
  const shown = cells.filter((cell) => cell.shown !== null).length;
  const counts =
    rule.method === "hide" ? `${plural(shown, "count", "counts")} shown as they are` : METHOD_WORDS[rule.method];
  return `As of ${isoInWords(asOf)}, period from ${isoInWords(from)}: ${listed(names)}${cut.length === 0 ? "" : `, ${cut.join(", ")}`}. Rule: at least ${rule.minimumCell}; ${counts}.`;
}

const METHOD_WORDS = { round: "all counts rounded", ranges: "all counts given as ranges" } as const;

/**
 * What a release can no longer show because of the releases before it: figures that it would show if none of them were.
 *
 * @param alone - the same release, prepared as if there were no earlier one
 */
export function lostToEarlier(release: PreparedRelease, alone: PreparedRelease, context: WordsContext): string[] {
  return release.tables.flatMap((table, at) => {
    const figures = (each: typeof table) => questionOfTable(table.id).figures(each, context);
    const shown = new Set(figures(table).flatMap(({ about, sentence }) => (sentence === null ? [] : [about])));
    const other = alone.tables[at];
    const lost = other ? figures(other).filter(({ about, sentence }) => sentence !== null && !shown.has(about)) : [];
    return lost.map(({ about }) => `${table.id}: ${about}`);
  });
}

/** What every later release is bound by, once this one was made. */
export function boundBy({ rule, protection: { hidden, small } }: PreparedRelease): string {
  if (rule.method !== "hide") {
    return "Once it is made, later releases are not tied to its rounded counts or ranges: release the same figures in one way only.";
  }
  if (hidden === 0)
    return "None of it is held back, so it takes nothing from later releases but cuts of the same children that differ from it by few.";
  return `Once it is made, no later release of the same children and day can show what it holds back: ${plural(small, "small count", "small counts")}, and ${counted(hidden - small)} from which a small one could be worked out. Nor can a later release cut the same children so that the difference from these figures is small: other age groups, other groups, another rule.`;
}
