import type { Settings } from "../../settings/settings";
import { OLDEST_DAYS } from "../children/read-children";
import { firstOfEach, mix } from "./first-of-each";
import type { Reading } from "../rows/reading";
import { type Children, NO_DAY, type Observations } from "../records";
import type { Staged } from "./staged";

/** Judges the staged observations together, leaves out those that do not count, and gives the rest in order. */
export function judgeObservations(
  reading: Reading,
  staged: Staged,
  children: Children,
  observers: readonly string[],
): Observations {
  const keep = new Uint8Array(staged.length).fill(1);
  for (let i = 0; i < staged.length; i += 1) {
    const rule = ruleBroken(staged, i, children, reading.settings);
    if (rule !== null) leave(reading, staged, keep, i, rule);
  }
  leaveCopies(reading, staged, keep);
  const kept = compact(staged, keep);
  listDisagreements(reading, kept);
  listImplausible(reading, kept, children);
  listEnteredEarly(reading, kept);
  return observationsOf(kept, observers);
}

/** Sources as in `Staged`, of the observations that are used. */
export type Kept = Staged;

function ruleBroken(staged: Staged, i: number, children: Children, { asOf, enteredBy }: Settings): string | null {
  const day = staged.day[i] as number;
  if (day < (children.birth[staged.child[i] as number] as number)) return "date-before-birth";
  if (asOf !== null && day > asOf) return "date-after-as-of";
  return enteredBy !== null && (staged.entered[i] as number) > enteredBy ? "entered-after-cut-off" : null;
}

function leave(reading: Reading, staged: Staged, keep: Uint8Array, i: number, rule: string): void {
  const { block, tally } = sourceOf(staged, i);
  const own = block.wide.length > 0 ? undefined : block.columns.get(COLUMN_OF_RULE.get(rule) ?? "");
  keep[i] = 0;
  tally.leave(rule);
  reading.findings.cell(rule, block, staged.row[i] as number, own ?? (staged.column[i] as number));
}

const COLUMN_OF_RULE = new Map([
  ["date-before-birth", "date"],
  ["date-after-as-of", "date"],
  ["entered-after-cut-off", "entered"],
  ["exact-copy", "child"],
]);

function leaveCopies(reading: Reading, staged: Staged, keep: Uint8Array): void {
  const { child, skill, day, result, observer, entered, exact } = staged;
  const first = firstOfEach(
    staged.length,
    (i) =>
      mix(child[i] as number, skill[i] as number, day[i] as number) ^
      mix(observer[i] as number, entered[i] as number, result[i] as number),
    (i, j) =>
      child[i] === child[j] &&
      skill[i] === skill[j] &&
      day[i] === day[j] &&
      result[i] === result[j] &&
      observer[i] === observer[j] &&
      entered[i] === entered[j] &&
      exact[i] === exact[j],
  );
  for (let i = 0; i < staged.length; i += 1) {
    if (first[i] === i || keep[i] === 0) continue;
    const { block, tally } = sourceOf(staged, i);
    if (sourceOf(staged, first[i] as number).block.file === block.file) {
      leave(reading, staged, keep, i, "exact-copy");
      continue;
    }
    keep[i] = 0;
    tally.leave("exact-copy");
    reading.findings.copyElsewhere(block);
  }
}

/** Different results for one child, skill and day: one warning, at the first result that differs. */
function listDisagreements(reading: Reading, kept: Kept): void {
  const { child, skill, day, result } = kept;
  const first = firstOfEach(
    kept.length,
    (i) => mix(child[i] as number, skill[i] as number, day[i] as number),
    (i, j) => child[i] === child[j] && skill[i] === skill[j] && day[i] === day[j],
  );
  const listed = new Set<number>();
  for (let i = 0; i < kept.length; i += 1) {
    const of = first[i] as number;
    if (result[of] === result[i] || listed.has(of)) continue;
    listed.add(of);
    reading.findings.cell("results-differ", sourceOf(kept, i).block, kept.row[i] as number, kept.column[i] as number);
  }
}

function listImplausible(reading: Reading, kept: Kept, children: Children): void {
  for (let i = 0; i < kept.length; i += 1) {
    const age = (kept.day[i] as number) - (children.birth[kept.child[i] as number] as number);
    if (age <= OLDEST_DAYS) continue;
    const { block } = sourceOf(kept, i);
    const column = block.wide.length > 0 ? undefined : block.columns.get("date");
    reading.findings.cell("age-implausible", block, kept.row[i] as number, column ?? (kept.column[i] as number));
  }
}

function listEnteredEarly(reading: Reading, kept: Kept): void {
  for (let i = 0; i < kept.length; i += 1) {
    const entered = kept.entered[i] as number;
    if (entered === NO_DAY || entered >= (kept.day[i] as number)) continue;
    const { block } = sourceOf(kept, i);
    reading.findings.cell("entered-before-seen", block, kept.row[i] as number, block.columns.get("entered") as number);
  }
}

export function sourceOf(staged: Staged, i: number): Staged["sources"][number] {
  return staged.sources[staged.source[i] as number] as Staged["sources"][number];
}

/** Moves the rows that are kept to the front, in order. */
function compact(staged: Staged, keep: Uint8Array): Kept {
  let n = 0;
  for (let i = 0; i < staged.length; i += 1) {
    if (keep[i] === 0) continue;
    if (n < i) {
      for (const column of [
        staged.child,
        staged.skill,
        staged.day,
        staged.result,
        staged.exact,
        staged.observer,
        staged.entered,
        staged.source,
        staged.row,
        staged.column,
      ]) {
        column[n] = column[i] as number;
      }
    }
    n += 1;
  }
  staged.length = n;
  return staged;
}

function observationsOf(kept: Kept, observers: readonly string[]): Observations {
  const n = kept.length;
  return {
    child: kept.child.slice(0, n),
    skill: Uint16Array.from(kept.skill.subarray(0, n)),
    day: kept.day.slice(0, n),
    result: kept.result.slice(0, n),
    exact: kept.exact.slice(0, n),
    observer: kept.observer.slice(0, n),
    observers,
    entered: kept.entered.slice(0, n),
    lastEntered: kept.lastEntered,
    places: {
      sheet: kept.source.slice(0, n),
      sheets: kept.sources.map(({ block }) => block.sheetName),
      row: kept.row.slice(0, n),
      column: kept.column.slice(0, n),
    },
  };
}
