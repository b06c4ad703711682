import type { CellOut, ColumnOut, SheetOut } from "../../workbook/sheets";

export const DECISIONS_SHEET = "Windowline decisions";

/** Columns of the sheet, by the key of a decision. */
const COLUMNS = [
  ["kind", "Decision", 14],
  ["revoked", "Revoked", 10],
  ["table", "Table", 14],
  ["child", "Child", 14],
  ["skill", "Skill", 26],
  ["alias", "Also written", 26],
  ["column", "Column", 18],
  ["order", "Order of dates", 16],
  ["heading", "Heading", 22],
  ["means", "Means", 18],
] as const;

export const DECISION_COLUMNS = COLUMNS.length;
/** The rows above the first decision: what the sheet is, and the headings. */
export const ROWS_ABOVE = 2;

const ABOUT =
  "How the records are to be read, as settled by a person. To revoke a decision, write yes under Revoked, then read the workbook again. Keep this sheet to carry the decisions to the next quarter.";

type Decision = Readonly<Record<string, unknown>>;

/** The decisions as plain rows that a person can read and revoke. */
export function decisionSheet(decisions: unknown): SheetOut {
  return {
    name: DECISIONS_SHEET,
    columns: COLUMNS.map(([, , width]): ColumnOut => ({ width, style: "text" })),
    rows: [
      [{ value: ABOUT, style: "note" }],
      COLUMNS.map(([, heading]): CellOut => ({ value: heading, style: "heading" })),
      ...listOf(decisions).map((each) => COLUMNS.map(([key]) => cellOf(each, key))),
    ],
    rowHeights: new Map([[0, 33]]),
    merged: [{ top: 0, left: 0, bottom: 0, right: COLUMNS.length - 1 }],
    frozen: { rows: ROWS_ABOVE, columns: 0 },
  };
}

/** Whether the second row of a sheet holds the headings, wherever its columns were moved. */
export function hasDecisionHeadings(values: readonly (readonly unknown[])[]): boolean {
  const headings = (values[1] ?? []).map(shown);
  return COLUMNS.every(([, heading]) => headings.includes(heading));
}

/** The rows as a list of decisions; blank rows are passed over, and what a cell says otherwise is left for its message. */
export function decisionsOf(values: readonly (readonly unknown[])[]): { decisions: Decision[] } {
  const headings = (values[1] ?? []).map(shown);
  const places = COLUMNS.map(([key, heading]) => ({ key, at: headings.indexOf(heading) }));
  const decisions = values.slice(ROWS_ABOVE).map((row) =>
    Object.fromEntries(
      places.flatMap(({ key, at }) => {
        const text = shown(row[at]);
        return text === "" ? [] : [[key, key === "revoked" ? yesOrNo(text) : text]];
      }),
    ),
  );
  return { decisions: decisions.filter((each) => Object.keys(each).length > 0) };
}

function listOf(decisions: unknown): Decision[] {
  const list = Array.isArray(decisions) ? decisions : (decisions as { decisions?: unknown } | null)?.decisions;
  if (!Array.isArray(list)) throw new RangeError("saveDecisions: there must be a list of decisions");
  const known = new Set<string>(COLUMNS.map(([key]) => key));
  for (const each of list as Decision[]) {
    if (Object.keys(each).some((key) => !known.has(key))) throw new RangeError("saveDecisions: an unknown key");
  }
  return list as Decision[];
}

function cellOf(decision: Decision, key: string): CellOut {
  const value = Object.hasOwn(decision, key) ? decision[key] : undefined;
  if (typeof value === "boolean") return value ? "yes" : "no";
  return typeof value === "string" ? value : null;
}

function shown(value: unknown): string {
  return typeof value === "string" || typeof value === "number" || typeof value === "boolean"
    ? String(value).trim()
    : "";
}

function yesOrNo(text: string): boolean | string {
  if (/^(yes|true|x)$/i.test(text)) return true;
  return /^(no|false)$/i.test(text) ? false : text;
}
