import { age, ageBand, correctedAge, gestationDays } from "./ages";
import { windowStatus } from "./window-status";

export interface WorksheetFunction {
  readonly fn: (...args: any[]) => any[][];
  /** Names in order; those in brackets may be left out. */
  readonly parameters: readonly string[];
}

/** Every function by the name that a cell calls it by, without the namespace. To add one: its file, a line here, its tests. */
export const FUNCTIONS: ReadonlyMap<string, WorksheetFunction> = new Map([
  entry("AGE", age, "birth on [unit]"),
  entry("CORRECTEDAGE", correctedAge, "birth gestation on [unit] [until]"),
  entry("GESTATIONDAYS", gestationDays, "gestation"),
  entry("AGEBAND", ageBand, "months [edges]"),
  entry("WINDOWSTATUS", windowStatus, "months opens closes [metMonths] [notMetMonths]"),
]);

export const NAMESPACE = "COHORT";

function entry(name: string, fn: (...args: any[]) => any[][], parameters: string): [string, WorksheetFunction] {
  return [name, { fn, parameters: parameters.split(" ") }];
}
