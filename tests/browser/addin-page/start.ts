/// <reference types="office-js" />
/** Stands in the page before office.js does: Excel's part, played by a workbook in memory. `?book=` names the workbook. */
import { makeSample } from "../../../src/sample/make-sample";
import { sampleSheets } from "../../../src/sample/sample-sheets";
import { bookOf } from "../../office/book-of";
import { checkApiLevels, openInOffice, prepareOffice } from "../../office/office-globals";
import { MANIFEST_SETS } from "../../office/rich-client";
import type { MemorySheet } from "../../office/workbook/memory-sheet";
import { CANARY, SAMPLES } from "./books";
import { withNames } from "./with-names";

declare global {
  interface Window {
    readonly excel: typeof excel;
  }
}

prepareOffice(MANIFEST_SETS);
checkLevelsFromTheStart();
const sample = SAMPLES[new URLSearchParams(location.search).get("book") ?? "faults"];
if (!sample) throw new Error("?book= names no workbook");
const book = bookOf(withNames(sampleSheets(makeSample(sample))), { name: `${CANARY}.xlsx` });
const host = openInOffice(book);

const excel = {
  book,
  host,
  /** Every sheet of the user's, and what is on it; for comparing before and after. */
  snapshots: (): string[] => book.sheets.map((sheet) => sheet.snapshot()),
  names: (): string[] => book.sheets.map(({ name }) => name),
  cellsOf: (name: string): unknown[][] => cellsOf(book.sheets.find((sheet) => sheet.name === name)),
  chartsOf: (name: string): number => book.sheets.find((sheet) => sheet.name === name)?.charts.length ?? 0,
  /** Has someone edit a cell of Observations after so many more requests. */
  editAfter(requests: number): void {
    const last = host.traffic.length + requests;
    host.plant = () => {
      if (host.traffic.length < last) return;
      host.plant = () => undefined;
      book.sheets.find(({ name }) => name === "Observations")?.put(1, 0, "another id");
    };
  },
  /** Calls `then` once the second new sheet is asked for: one is in the workbook by then. */
  atSecondSheet(then: () => void): void {
    let sheets = 0;
    host.plant = (member) => {
      if (member !== "WorksheetCollection.Add") return;
      sheets += 1;
      if (sheets === 2) then();
    };
  },
  /** A mistake planted on purpose, so that the check of the API levels is known to be on. */
  async askForNewerApi(): Promise<unknown> {
    const run = Excel.run(async (context) => {
      context.workbook.worksheets.getItem("Children").getRange("A1").getMergedAreasOrNullObject();
    });
    return run.catch((error: { code?: unknown }) => error.code);
  },
  /** The ids under which Excel finds the worksheet functions. */
  functionIds: (): string[] => Object.keys(functions()),
  /** Calls a worksheet function as Excel's runtime does: with an object of its own behind the arguments. */
  call: async (id: string, args: readonly unknown[]): Promise<unknown> => functions()[id]?.(...args, { address: "A1" }),
};

Object.defineProperty(window, "excel", { value: excel });

/** office.js asks for its context once its own parts are there, and before it sends anything. */
function checkLevelsFromTheStart(): void {
  const client = window.external as unknown as { GetContext: () => object };
  const { GetContext } = client;
  client.GetContext = () => {
    checkApiLevels();
    return GetContext();
  };
}

function cellsOf(sheet: MemorySheet | undefined): unknown[][] {
  const used = sheet?.usedArea();
  if (!sheet || !used) return [];
  return Array.from({ length: used.bottom + 1 }, (_, row) =>
    Array.from({ length: used.right + 1 }, (__, column) => sheet.valueAt(row, column) ?? null),
  );
}

type Functions = Readonly<Record<string, (...args: unknown[]) => unknown>>;

/** What is registered with office.js. */
function functions(): Functions {
  const { CustomFunctions } = globalThis as unknown as { CustomFunctions: { _association: { mappings: Functions } } };
  return CustomFunctions._association.mappings;
}
