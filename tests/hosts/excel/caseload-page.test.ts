import { makePage } from "../../../src/report/pages/make-page";
import { makeSample } from "../../../src/sample/make-sample";
import { sampleSheets } from "../../../src/sample/sample-sheets";
import { removeAdded } from "../../../taskpane/jobs/after-build";
import { addPage, listChildren } from "../../../taskpane/jobs/caseload";
import { openPane } from "../../../taskpane/jobs/open";
import { openInOffice } from "../../office/office-globals";
import { startOffice } from "../../office/in-node";
import { settingsOf } from "../../records/book";
import { paneOver } from "../../taskpane/pane-over";
import { bookOf, hasty, job } from "./support";

beforeAll(() => startOffice());

test("in Excel: a child's page is added after the user's sheets, on one page of paper, and taken away again", async () => {
  const book = bookOf(sampleSheets(makeSample({ children: 16, seed: 3 })));
  openInOffice(book);
  const before = book.sheets.map((sheet) => sheet.snapshot());
  const excel = hasty();
  const { pane } = paneOver(excel);
  const { state, dispatch } = pane.store;
  await openPane(pane);
  dispatch({ type: "entry changed", name: "asOf", value: "2026-09-30" });
  await listChildren(pane);
  dispatch({ type: "therapist chosen", therapist: state().found?.therapists?.find((code) => code !== "") ?? null });
  await listChildren(pane);
  const id = state().caseload.listed?.lines[0]?.child ?? "";
  await addPage(pane, { kind: "child", id });

  const expected = makePage(await excel.read(job()), settingsOf({ asOf: "2026-09-30" }), [], { kind: "child", id });
  const added = book.sheets.at(-1)!;
  expect([book.sheets.length, added.name]).toEqual([before.length + 1, "Child page (family)"]);
  expected.rows.forEach((cells, row) =>
    cells.forEach((cell, column) => {
      const value = typeof cell === "object" ? (cell?.value ?? null) : cell;
      expect(added.valueAt(row, column) ?? null).toBe(value);
    }),
  );
  expect(Object.fromEntries(added.page)).toMatchObject({
    Orientation: "Portrait",
    PaperSize: "Letter",
    Zoom: { horizontalFitToPages: 1, verticalFitToPages: 1 },
  });
  // What Excel keeps of the run with the workbook names nobody.
  expect(state().receipts).toEqual([{ sheets: ["Child page (family)"], label: "Child page as of September 30, 2026" }]);
  await removeAdded(pane, state().receipts[0]!);
  expect(book.sheets.map((sheet) => sheet.snapshot())).toEqual(before);
}, 60_000);
