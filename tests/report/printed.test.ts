/** The report of the sample program as a board would get it: printed by LibreOffice on Letter and on A4. */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { dayOf } from "../../src/age/day";
import { writeWorkbook } from "../../src/hosts/file/write-workbook";
import { reportSheets } from "../../src/report/sheets/report-sheets";
import { makeSample } from "../../src/sample/make-sample";
import { sampleSheets } from "../../src/sample/sample-sheets";
import { parseSettings } from "../../src/settings/settings";
import type { SheetOut } from "../../src/workbook/sheets";
import { asRead } from "../sample/as-read";
import { componentTest, withConverted } from "../support/component";
import { reportOf } from "../support/report-of";
import { coveredWords, filledShare, pagesOf, printSizes } from "./print";

const MOST_PAGES = 14;
const SMALLEST_POINTS = 8.5;
const LEAST_FILLED = 0.15;
const A4 = 9;

test.each([
  ["the sample", []],
  ["the sample by site", ["Site"]],
])("%s prints one sheet per page, on no more than fourteen", (_, by) => {
  expect(sheetsOf(by).length).toBeLessThanOrEqual(MOST_PAGES);
});

componentTest(
  ["soffice", "pdftotext"],
  "on Letter: pages, print no smaller than 8.5 points, nothing cut, no page nearly empty",
  () => {
    printed(writeWorkbook(sheetsOf([]), { created: dayOf(2026, 9, 30) }));
  },
);

componentTest(["soffice", "pdftotext"], "on A4 the same", () => {
  printed(onPaper(writeWorkbook(sheetsOf([]), { created: dayOf(2026, 9, 30) }), A4));
});

function printed(bytes: Uint8Array): void {
  const folder = mkdtempSync(path.join(tmpdir(), "windowline-"));
  try {
    const file = path.join(folder, "report.xlsx");
    writeFileSync(file, bytes);
    withConverted(file, "pdf", (pdf) => {
      const pages = pagesOf(pdf);
      expect(pages.length).toBeGreaterThan(10);
      expect(pages.length).toBeLessThanOrEqual(MOST_PAGES);
      expect(Math.min(...printSizes(pdf))).toBeGreaterThanOrEqual(SMALLEST_POINTS);
      pages.forEach((page, at) => {
        expect([at + 1, coveredWords(page)]).toEqual([at + 1, []]);
        expect(filledShare(page)).toBeGreaterThan(LEAST_FILLED);
        expect(page.words.some(({ text }) => text.includes("###"))).toBe(false);
      });
    });
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** The same file for another paper: ECMA-376 Part 1, 18.3.1.63, attribute paperSize (9 is A4). */
function onPaper(bytes: Uint8Array, paper: number): Uint8Array {
  const parts = Object.entries(unzipSync(bytes)).map(([name, part]): [string, Uint8Array] => {
    if (!name.startsWith("xl/worksheets/sheet")) return [name, part];
    const xml = strFromU8(part);
    const other = xml.includes("paperSize=")
      ? xml.replace(/paperSize="\d+"/, `paperSize="${paper}"`)
      : xml.replace("<pageSetup ", `<pageSetup paperSize="${paper}" `);
    return [name, strToU8(other)];
  });
  return zipSync(Object.fromEntries(parts));
}

const made = new Map<string, SheetOut[]>();

/** Made once for each grouping: an estimate of every skill takes its time. */
function sheetsOf(by: readonly string[]): SheetOut[] {
  const known = made.get(by.join()) ?? reported(by);
  made.set(by.join(), known);
  return known;
}

function reported(by: readonly string[]): SheetOut[] {
  const parsed = parseSettings({ asOf: "2026-09-30", by }, 1900);
  if ("messages" in parsed) throw new Error(parsed.messages.join(" "));
  return reportSheets(reportOf(sampleBook(), parsed.settings, null));
}

/** The sample workbook, as its README makes it. */
function sampleBook() {
  return asRead(sampleSheets(makeSample({ children: 240, seed: 7 })));
}
