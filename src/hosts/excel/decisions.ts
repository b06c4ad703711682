/// <reference types="office-js" />
import type { JobOptions } from "../../workbook/host";
import { DECISION_COLUMNS, decisionSheet, DECISIONS_SHEET, decisionsOf, hasDecisionHeadings } from "./decision-rows";
import { markedSheets } from "./mark";
import { type Patience, readInExcel } from "./run";
import { addSheet, freshNames } from "./write/add-sheets";
import { writeCells } from "./write/cells";
import { type AddedSheet, withdraw } from "./write/remove-sheets";
import { readStanding } from "./write/standing";
import { doSteps } from "./write/steps";
import { TableNames } from "./write/tables";
import { writeSheet } from "./write/write-sheet";

export async function loadDecisions(patience: Patience, options?: JobOptions): Promise<unknown> {
  const found = await findDecisions(patience, options);
  return found ? decisionsOf(found.values) : null;
}

/** Decisions stand on a sheet of their own, where a person can read, revoke and carry them on. */
export async function saveDecisions(decisions: unknown, patience: Patience, options?: JobOptions): Promise<void> {
  const sheet = decisionSheet(decisions);
  const found = await findDecisions(patience, options);
  if (!found) return addDecisions(sheet, patience);
  await writeCells(found.id, sheet, DATE_SYSTEM, "", patience);
  const [first, last] = [sheet.rows.length, found.values.length];
  // Only then the rows that are left over, so that a failure in between loses nothing.
  if (last > first) {
    await doSteps(
      found.id,
      [(target) => target.getRangeByIndexes(first, 0, last - first, DECISION_COLUMNS).clear("Contents")],
      patience,
    );
  }
}

/** Decisions hold no dates. */
const DATE_SYSTEM = 1900;

interface Found {
  readonly id: string;
  readonly values: readonly (readonly unknown[])[];
}

/** The sheet that bears the mark, or one of its name and headings where another program has dropped the mark. */
function findDecisions(patience: Patience, options?: JobOptions): Promise<Found | null> {
  return readInExcel(
    async (context) => {
      const sheets = await markedSheets(context);
      const marked = sheets.find(({ mark }) => mark?.kind === "decisions");
      const candidate = marked ?? sheets.find(({ name }) => name === DECISIONS_SHEET);
      if (!candidate) return null;
      const used = context.workbook.worksheets.getItem(candidate.id).getUsedRangeOrNullObject(true);
      used.load("rowIndex,columnIndex,values");
      await context.sync();
      const values = used.isNullObject ? [] : fromA1(used);
      return marked || hasDecisionHeadings(values) ? { id: candidate.id, values } : null;
    },
    patience,
    options,
  );
}

function fromA1({ rowIndex, columnIndex, values }: Excel.Range): unknown[][] {
  const lead = Array.from({ length: columnIndex }, () => "");
  const above = Array.from({ length: rowIndex }, () => []);
  return [...above, ...(values as unknown[][]).map((row) => [...lead, ...row])];
}

async function addDecisions(sheet: ReturnType<typeof decisionSheet>, patience: Patience): Promise<void> {
  const { sheets } = await readStanding(patience);
  const names = freshNames(
    [sheet],
    sheets.map(({ name }) => name),
  );
  const added: AddedSheet[] = [];
  try {
    const mark = { kind: "decisions", run: 0, label: "" } as const;
    const id = await addSheet(names[0] as string, mark, patience, undefined, added);
    await writeSheet(id, sheet, DATE_SYSTEM, new TableNames([]), patience);
  } catch (error) {
    await withdraw(added, patience);
    throw error;
  }
}
