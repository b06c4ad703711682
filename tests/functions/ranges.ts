import type { OracleInput, OracleRow } from "../oracle/input";

type Cell = string | number | null;
export type Range = Cell[][];

/** The table arguments, the as-of date and the settings range that the rows of a program stand for. */
export function argumentsOf(input: OracleInput): { tables: Range[]; asOf: string; settings: Range } {
  const { asOf, from, enteredBy, belowDays, untilMonths, edges, recheckDays, disagreement, by } = input.settings;
  const children = input.children.map((row): Cell[] => [
    row.child,
    row.birth,
    row.gestation,
    row.site,
    row.therapist,
    row.enrolled,
    row.left,
  ]);
  const observations = input.observations.map((row): Cell[] => [
    row.child,
    row.skill,
    row.date,
    row.result,
    row.observer ?? null,
    row.entered ?? null,
  ]);
  const skills = input.skills.map((row): Cell[] => [
    row.skill,
    row.label,
    row.area,
    row.opens,
    row.closes,
    row.ageBasis,
    row.follows,
  ]);
  return {
    tables: [
      [["Child", "Birth date", "Gestation", "Site", "Therapist", "Enrolled", "Left"], ...children],
      [["Child", "Skill", "Date", "Result", "Observer", "Entered"], ...observations],
      [["Skill", "Label", "Area", "Opens", "Closes", "Age basis", "Follows"], ...skills],
    ],
    asOf,
    settings: [
      ["from", from],
      ["enteredBy", enteredBy],
      ["correctBelow", `${Math.floor(belowDays / 7)}+${belowDays % 7}`],
      ["correctUntil", untilMonths],
      ["edges", edges.join(", ")],
      ["recheck", recheckDays === Infinity ? "none" : recheckDays],
      ["disagreement", disagreement ?? null],
      ["by", by.length === 0 ? null : by.join(",")],
    ],
  };
}

/** The rows below the header as objects, in the order of the header. */
export function asRows(spilled: readonly (readonly unknown[])[], keys?: readonly string[]): Record<string, unknown>[] {
  const [header = [], ...rows] = spilled;
  return rows.map((row) => Object.fromEntries(row.map((cell, at) => [keys?.[at] ?? String(header[at]), cell])));
}

export function pick(row: OracleRow, keys: readonly string[]): OracleRow {
  return Object.fromEntries(keys.map((key) => [key, row[key] ?? null]));
}

/** Rows in one order, whatever order they came in. */
export function sorted(rows: readonly unknown[]): unknown[] {
  const text = (row: unknown) =>
    JSON.stringify(row, (_key, value) => (typeof value === "number" ? value.toFixed(6) : value));
  return [...rows].sort((a, b) => (text(a) < text(b) ? -1 : 1));
}
