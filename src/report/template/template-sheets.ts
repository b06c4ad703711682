import { dayFromIso } from "../../age/day";
import { AREAS } from "../../records/records";
import { TABLES } from "../../records/tables";
import type { ColumnSpec, TableName, TableSpec } from "../../records/tables/spec";
import type { CellOut, ColumnOut, ListOut, SheetOut } from "../../workbook/sheets";
import { GUIDE } from "./guide";

const LAST_ROW = 2000;
const WIDE = 44;
const USUAL = 14;
const WIDE_COLUMNS = new Set(["label", "tryTogether", "basis", "sign", "reason"]);
/** Columns that only some workbooks need. */
const NOT_IN_TEMPLATE = new Set(["dueDate", "weeksEarly"]);

/** An empty workbook to keep records in: a guide, the tables with one example row each, and lists to choose from. */
export function templateSheets(): SheetOut[] {
  return [guideSheet(), ...TABLES.map(tableSheet)];
}

function guideSheet(): SheetOut {
  return {
    name: "Guide",
    columns: [{ width: 92 }],
    rows: GUIDE.map(({ text, style }): CellOut[] => [{ value: text, style }]),
    gridlines: false,
    print: { landscape: false, fit: "one page", footer: "How to keep records so that they can be counted" },
  };
}

function tableSheet(spec: TableSpec): SheetOut {
  const columns = spec.columns.filter(({ key }) => !NOT_IN_TEMPLATE.has(key));
  const example = EXAMPLES[spec.name];
  return {
    name: spec.name,
    columns: columns.map(columnOf),
    rows: [columns.map(({ heading }) => heading), columns.map((column) => cellOf(column, example[column.key] ?? null))],
    frozen: { rows: 1, columns: 1 },
    tables: [{ name: spec.name, range: { top: 0, left: 0, bottom: 1, right: columns.length - 1 } }],
    lists: columns.flatMap((column, at) => listOf(spec, column, at) ?? []),
  };
}

function columnOf({ key, kind }: ColumnSpec): ColumnOut {
  const width = WIDE_COLUMNS.has(key) ? WIDE : USUAL;
  return kind === "date" ? { width, format: "date" } : { width };
}

function cellOf({ kind }: ColumnSpec, value: string | number | null): CellOut {
  const day = kind === "date" && typeof value === "string" ? dayFromIso(value) : null;
  return day === null ? value : { value: day, format: "date" };
}

/** What a cell of a column is chosen from: its words, the areas, or the ids of another sheet. */
function listOf(spec: TableSpec, column: ColumnSpec, at: number): ListOut | null {
  const range = { top: 1, bottom: LAST_ROW - 1, left: at, right: at };
  if (column.words) return { range, values: Object.keys(column.words) };
  if (column.key === "result") return { range, values: ["met", "emerging", "not met", "lost"] };
  if (column.key === "area") return { range, values: [...AREAS] };
  if (column.key === "child" && spec.name !== "Children") return { range, from: idsOf("Children") };
  return column.key === "skill" && spec.name === "Observations" ? { range, from: idsOf("Skills") } : null;
}

function idsOf(sheet: TableName): NonNullable<ListOut["from"]> {
  return { sheet, range: { top: 1, bottom: LAST_ROW - 1, left: 0, right: 0 } };
}

/** One invented row per table. The window of walking alone: WHO Multicentre Growth Reference Study Group (2006), Acta Paediatr Suppl 450:86-95. */
const EXAMPLES: Readonly<Record<TableName, Readonly<Record<string, string | number>>>> = {
  Children: {
    child: "example-1",
    birth: "2025-02-10",
    gestation: "34+2",
    site: "Main Street",
    therapist: "T1",
    enrolled: "2025-06-02",
  },
  Observations: {
    child: "example-1",
    skill: "walk-alone",
    date: "2026-03-04",
    result: "not met",
    observer: "T1",
    entered: "2026-03-05",
  },
  Skills: {
    skill: "walk-alone",
    label: "Walks alone",
    area: "gross motor",
    opens: 8.2,
    closes: 17.6,
    ageBasis: "corrected",
    expectedShare: 0.99,
    basis: "WHO 2006, 1st to 99th percentile",
  },
  Referrals: {
    child: "example-1",
    referred: "2026-01-12",
    area: "speech",
    from: "Clinic",
    to: "Early intervention",
    received: "2026-01-14",
    evaluated: "2026-02-09",
    eligible: "yes",
    plan: "2026-02-20",
  },
  Signs: { child: "example-1", date: "2026-03-04", sign: "Does not turn to sounds", seen: "absent" },
  Ratings: { child: "example-1", outcome: "Outcome 1", entryDate: "2025-06-30", entryRating: 3 },
};
