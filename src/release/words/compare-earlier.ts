import { dayFromIso } from "../../age/day";
import { settingsThatBearOn } from "../../settings/settings";
import { plural } from "../../words/numbers";
import type { ReleasedTable } from "../release-table";
import { isoInWords } from "./days";
import type { EarlierReport, EarlierTable } from "./earlier-report";
import { protectedCopy } from "./protected-copy";
import { textOf } from "./read-released";
import { sentencesOf } from "./sentences";
import type { WordsContext } from "./words-context";

/** Settings under their own names, as a report carries them. */
type Settings = EarlierReport["settings"];

/** The figures of a table beside those of an earlier report; `reason` where they cannot stand side by side. */
export interface Comparison {
  readonly table: string;
  readonly reason: string | null;
  readonly pairs: readonly { readonly now: string; readonly earlier: string }[];
  /** Rows shown now whose earlier figure is not there, or too small to be repeated. */
  readonly without: number;
}

/**
 * The same figures of an earlier report, where the definition is the same.
 *
 * An earlier report is not protected, and no equation ties it to this release: its small counts are left out here by the
 * same threshold, and what is printed is for the program, not for the release.
 */
export function compareWithEarlier(
  tables: readonly ReleasedTable[],
  context: WordsContext,
  settings: Settings,
  earlier: EarlierReport,
): Comparison[] {
  return tables.map((table) => {
    const found = earlier.tables.find(({ id }) => id === table.id);
    const reason = found
      ? differenceOf(table, found, settings, earlier.settings)
      : "the earlier report does not have it";
    if (reason !== null || !found) return { table: table.id, reason, pairs: [], without: 0 };
    return { table: table.id, reason: null, ...pairsOf(table, found, context, earlier.settings) };
  });
}

/** The comparison in lines for the terminal. */
export function comparisonLines({ table, reason, pairs, without }: Comparison): string[] {
  if (reason !== null) return [`${table}: not compared, because ${reason}.`];
  const rest =
    without === 0 ? [] : [`${table}: ${plural(without, "row has", "rows have")} no earlier figure to compare with.`];
  return [...pairs.map(({ now, earlier }) => `${now} ${earlier}`), ...rest];
}

/** What makes two figures of one name different ones. The threshold, the seed and the dates themselves do not. */
const DEFINING = settingsThatBearOn("ages", "met", "boxes", "groups", "confidence");

function differenceOf(table: ReleasedTable, earlier: EarlierTable, now: Settings, then: Settings): string | null {
  const changed = DEFINING.filter((name) => said(now[name]) !== said(then[name]));
  if (changed.length > 0) {
    return changed.map((name) => `${name} was ${said(then[name])} and is ${said(now[name])}`).join(", ");
  }
  if (table.population !== earlier.population) return "it counted other children";
  if ((said(now.enteredBy) === NOT_SET) !== (said(then.enteredBy) === NOT_SET)) {
    return "only one of the two leaves out rows by the day they were typed in";
  }
  if (said(now.asOf) === said(then.asOf)) return "it is of the same day";
  const [length, before] = [periodDays(now), periodDays(then)];
  if (length === null || before === null || Math.abs(length - before) > QUARTERS_DIFFER_DAYS) {
    return "its period is of another length";
  }
  return null;
}

const NOT_SET = "not set";
/** Quarters run from 90 to 92 days. */
const QUARTERS_DIFFER_DAYS = 2;

function said(setting: Settings[string] | undefined): string {
  if (setting === null || setting === undefined) return NOT_SET;
  const text = Array.isArray(setting) ? setting.join(", ") : String(setting);
  return text === "" ? NOT_SET : text;
}

function periodDays({ from, asOf }: Settings): number | null {
  const [first, last] = [from, asOf].map((iso) => (typeof iso === "string" ? dayFromIso(iso) : null));
  return typeof first === "number" && typeof last === "number" ? last - first : null;
}

function pairsOf(table: ReleasedTable, found: EarlierTable, context: WordsContext, settings: Settings) {
  const before = protectedCopy(table, found, context.rule.minimumCell);
  const asOf = said(settings.asOf);
  const then = { ...context, asOf, from: said(settings.from) };
  const earlier = new Map(sentencesOf(before, then).map(({ row, text }) => [keyOf(before, row), text]));
  const now = sentencesOf(table, context);
  const pairs = now.flatMap(({ row, text }) => {
    const same = earlier.get(keyOf(table, row));
    return same === undefined ? [] : [{ now: text, earlier: `Earlier report, as of ${isoInWords(asOf)}: ${same}` }];
  });
  return { pairs, without: now.length - pairs.length };
}

/** The texts and ages that name a row. */
function keyOf(table: ReleasedTable, row: number): string {
  const cells = table.rows[row] ?? [];
  const names = table.columns.flatMap(({ key, unit }, at) =>
    unit === "text" || key === "age" || key === "statement" ? [textOf(cells[at] ?? null)] : [],
  );
  return JSON.stringify(names);
}
