import type { SheetIn, WorkbookIn } from "../../../src/workbook/workbook";
import { CELL } from "../../../src/workbook/cells";
import { GridBuilder } from "../../../src/workbook/grid-builder";
import { serialOf } from "../../../src/age/serial";
import type { Understanding } from "../../../src/records/understanding/understanding";
import type { Choice } from "../../../src/records/understanding/choices";
import type { Plan, PlannedCheck } from "./plan";

/** A program as it keeps its records, and what its manager has to choose. */
export interface Program {
  readonly name: string;
  readonly workbook: (plan: Plan) => WorkbookIn;
  /** The acts beside the one that confirms everything. */
  readonly acts: (found: Understanding) => readonly Choice[];
  /** What of a plan such a workbook keeps. */
  readonly keeps?: (plan: Plan) => Plan;
}

export type Cell = string | number | null | { readonly day: number };

export const day = (value: number | null): Cell => (value === null ? null : { day: value });
export const merge = (row: number, left: number, right: number) => ({ top: row, bottom: row, left, right });

export function sheetOf(name: string, rows: readonly (readonly Cell[])[], merged: SheetIn["merged"] = []): SheetIn {
  const builder = new GridBuilder();
  rows.forEach((row, r) =>
    row.forEach((cell, c) => {
      if (cell === null || cell === "") return;
      if (typeof cell === "string") builder.text(r, c, cell);
      else if (typeof cell === "number") builder.number(r, c, cell);
      else builder.number(r, c, serialOf(cell.day, 1900), CELL.date);
    }),
  );
  return { name, grid: builder.build(), tables: [], merged };
}

export const word = (words: Readonly<Record<PlannedCheck["result"], string>>) => (check: PlannedCheck | undefined) =>
  check ? words[check.result] : null;

/** A row per child and visit, a column per skill. */
export function visits(
  plan: Plan,
  skills: readonly string[],
  of: (check: PlannedCheck | undefined) => Cell,
  idOf = (id: string) => id,
): Cell[][] {
  const keys = [
    ...new Set(plan.checks.filter(({ skill }) => skills.includes(skill)).map((each) => `${each.child}|${each.day}`)),
  ];
  return keys.map((key) => {
    const [child, at] = key.split("|") as [string, string];
    const own = plan.checks.filter((each) => each.child === child && each.day === Number(at));
    return [idOf(child), day(Number(at)), ...skills.map((skill) => of(own.find((each) => each.skill === skill)))];
  });
}

export const skillsOf = (plan: Plan, ...areas: string[]) =>
  plan.skills.filter(({ area }) => areas.includes(area)).map(({ id }) => id);
