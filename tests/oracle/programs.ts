import type { ChildRow, ObservationRow, OracleInput, OracleRow, OracleSettings, Result, SkillRow } from "./input";
import { oracleTables, type OracleTableId } from "./oracle-tables";

/** Short ways to write a small program down in a test. */
const SETTINGS: OracleSettings = {
  asOf: "2024-06-30",
  from: "2024-04-01",
  enteredBy: null,
  belowDays: 259,
  untilMonths: 24,
  edges: [0, 3, 6, 9, 12, 18, 24, 36],
  recheckDays: 90,
  by: [],
};

export function program(
  children: readonly ChildRow[],
  observations: readonly ObservationRow[],
  options: { readonly skills?: readonly SkillRow[]; readonly settings?: Partial<OracleSettings> } = {},
): OracleInput {
  return {
    children,
    observations,
    skills: options.skills ?? [skill("sits")],
    settings: { ...SETTINGS, ...options.settings },
  };
}

export function child(id: string, birth: string, more: Partial<ChildRow> = {}): ChildRow {
  return { child: id, birth, gestation: null, site: "North", therapist: "T1", enrolled: birth, left: null, ...more };
}

export function look(id: string, date: string, result: Result, more: Partial<ObservationRow> = {}): ObservationRow {
  return { child: id, skill: "sits", date, result, ...more };
}

export function skill(id: string, more: Partial<SkillRow> = {}): SkillRow {
  const plain = { label: id, area: "gross motor", opens: 6, closes: 9, expectedShare: null, follows: null } as const;
  return { skill: id, ageBasis: "chronological", ...plain, ...more };
}

/** The one row that has these values. */
export function rowWith(input: OracleInput, table: OracleTableId, wanted: OracleRow): OracleRow {
  const found = oracleTables(input)[table].filter((row) =>
    Object.entries(wanted).every(([key, value]) => row[key] === value),
  );
  const [only] = found;
  if (only === undefined || found.length > 1) throw new RangeError(`rowWith: ${found.length} rows of ${table}`);
  return only;
}
