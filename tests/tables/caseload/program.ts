import { buildCohort } from "../../../src/cohort/cohort";
import { caseload } from "../../../src/tables/caseload";
import { type TableContext, tableContext } from "../../../src/tables/context";
import type { Table } from "../../../src/tables/table";
import { bookWith, type Rows, settingsOf, sheet } from "../../records/book";
import { readRecords } from "../../../src/records/read-records";

export const AS_OF = "2026-09-30";

/** Eight skills of each kind of window, all closed at 6 months: 99 in 100, 75 in 100, no share. */
const KINDS = [
  ["who", 0.99],
  ["cdc", 0.75],
  ["own", null],
] as const;

export const SKILL_ROWS: Rows = [
  ["Skill", "Label", "Area", "Opens", "Closes", "Age basis", "Expected share", "Follows", "Try together", "Basis"],
  ...KINDS.flatMap(([kind, share]) =>
    Array.from({ length: 8 }, (_, n) => {
      const area = n % 2 === 0 ? "gross motor" : "speech";
      return [`${kind}${n + 1}`, `Skill ${kind} ${n + 1}`, area, 1, 6, "chronological", share, null, null, "invented"];
    }),
  ),
  ["later", "Opens at 20 months", "cognitive", 20, 26, "chronological", 0.99, null, "Pour water together", "invented"],
  ["creeps", "Creeps", "gross motor", 5, 10, "chronological", 0.99, null, null, "invented"],
  ["strolls", "Strolls", "gross motor", 8, 30, "chronological", 0.99, "creeps", "Stroll together", "invented"],
];

export interface ProgramRows {
  /** Child, birth, gestation, therapist, enrolled, left. */
  readonly children: Rows;
  /** Child, skill, date, result, observer. */
  readonly looks?: Rows;
  /** Child, date, sign, seen, action. */
  readonly signs?: Rows;
  /** Skills in place of the usual ones. */
  readonly skills?: Rows;
  readonly settings?: Record<string, unknown>;
}

export function contextOf({
  children,
  looks = [],
  signs,
  skills = SKILL_ROWS,
  settings = {},
}: ProgramRows): TableContext {
  const parsed = settingsOf({ asOf: AS_OF, ...settings });
  const workbook = bookWith({
    children: [["Child", "Birth date", "Gestation", "Therapist", "Enrolled", "Left"], ...children],
    observations: [["Child", "Skill", "Date", "Result", "Observer"], ...looks],
    skills,
    more: signs ? [sheet("Signs", [["Child", "Date", "Sign", "Seen", "Action"], ...signs])] : [],
  });
  const records = readRecords(workbook, parsed);
  return tableContext(buildCohort(records, parsed), parsed, records);
}

export type RowByKey = Readonly<Record<string, string | number | boolean | null>>;

export function rowsByKey({ columns, rows }: Table): RowByKey[] {
  return rows.map((row) => Object.fromEntries(columns.map(({ key }, at) => [key, row[at] ?? null])));
}

export function caseloadOf(program: ProgramRows): RowByKey[] {
  return rowsByKey(caseload(contextOf(program)));
}

/** The row of the one child of a program. */
export function only(program: ProgramRows): RowByKey {
  const rows = caseloadOf(program);
  if (rows.length !== 1) throw new Error(`${rows.length} rows`);
  return rows[0] as RowByKey;
}
