import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import ExcelJS from "exceljs";
import { strFromU8, unzipSync } from "fflate";
import { dayOf } from "../../../../src/age/day";
import { writeWorkbook } from "../../../../src/hosts/file/write-workbook";
import { dataSheets } from "../../../../src/report/sheets/data-sheets";
import { reportSheets } from "../../../../src/report/sheets/report-sheets";
import { skillStatusTable, smallReport } from "../../../report/sheets/fixture";
import {
  ratingsTable,
  referralsTable,
  scanTable,
  serviceReport,
  stepsTable,
  trendTable,
} from "../../../report/sheets/service-tables";
import { componentTest, withConverted } from "../../../support/component";

const created = dayOf(2026, 9, 30);
const report = smallReport();
const whole = { ...report, tables: [...report.tables, skillStatusTable()] };
const sheets = [...reportSheets(whole), ...dataSheets(whole)];
const bytes = writeWorkbook(sheets, { created });
const parts = Object.entries(unzipSync(bytes)).map(([name, part]) => ({ name, xml: strFromU8(part) }));
const chartParts = parts.filter(({ name }) => /charts\/chart\d+\.xml$/.test(name));

test("a second run gives the same bytes", () => {
  expect(Buffer.from(writeWorkbook(sheets, { created })).equals(Buffer.from(bytes))).toBe(true);
});

test("no part holds a formula of a cell, a link to outside, a hidden sheet or an author", () => {
  for (const { name, xml } of parts) {
    if (name.startsWith("xl/worksheets/sheet")) expect(xml).not.toMatch(/<f[ >/]/);
    expect(xml).not.toMatch(/TargetMode="External"|state="hidden"|state="veryHidden"/);
    expect(name).not.toMatch(/externalLink|vbaProject/);
  }
  expect(partNamed("docProps/core.xml")).toContain("<dc:creator></dc:creator>");
});

test("each sheet of data is set to be printed: landscape, one page wide, its header row on every page, page numbers", async () => {
  const workbook = new ExcelJS.Workbook();
  await workbook.xlsx.load(Buffer.from(bytes) as unknown as ArrayBuffer);
  expect(workbook.worksheets.map(({ name }) => name)).toEqual(sheets.map(({ name }) => name));
  const sheet = workbook.getWorksheet("Met by age group");
  expect(sheet?.pageSetup).toMatchObject({
    orientation: "landscape",
    fitToPage: true,
    fitToWidth: 1,
    fitToHeight: 0,
    printTitlesRow: "3:3",
  });
  expect(sheet?.headerFooter.oddFooter).toContain("Page &P of &N");
  expect(sheet?.views[0]).toMatchObject({ state: "frozen", xSplit: 1, ySplit: 3 });
  expect(sheet?.getCell("A4").value).toBe("Walks some steps alone");
  expect(sheet?.getCell("M4").value).toBe(0.8);
  expect(sheet?.getCell("M4").numFmt).toBe("0.0%_)_)");
});

test("the message of every chart stands in its drawing", () => {
  const drawings = parts.filter(({ name }) => /drawings\/drawing\d+\.xml$/.test(name)).map(({ xml }) => xml);
  const described = drawings.join("").match(/<xdr:cNvPr [^>]*descr="[^"]{60,}"/g) ?? [];
  expect(described).toHaveLength(chartParts.length);
  expect(chartParts).toHaveLength(3);
});

const SERIES_ORDER = [
  "c:idx",
  "c:order",
  "c:tx",
  "c:spPr",
  "c:invertIfNegative",
  "c:marker",
  "c:dPt",
  "c:dLbls",
].concat(["c:cat", "c:xVal", "c:val", "c:yVal", "c:smooth"]);
const AXIS_ORDER = ["c:axId", "c:scaling", "c:delete", "c:axPos", "c:majorGridlines", "c:title", "c:numFmt"].concat([
  "c:majorTickMark",
  "c:minorTickMark",
  "c:tickLblPos",
  "c:spPr",
  "c:txPr",
  "c:crossAx",
  "c:crosses",
  "c:crossBetween",
  "c:majorUnit",
]);

/** Element order of CT_BarSer, CT_ScatterSer, CT_ValAx: ECMA-376 Part 1, 21.2.2 and its schema dml-chart.xsd. From memory of the schema. */
test("the parts of a series and an axis stand in the order of the schema", () => {
  const chart = ["c:title", "c:autoTitleDeleted", "c:plotArea", "c:legend", "c:plotVisOnly", "c:dispBlanksAs"];
  for (const { xml } of chartParts) {
    for (const each of elements(xml, "c:chart")) expectOrder(childrenOf(each), chart);
    for (const each of elements(xml, "c:ser")) expectOrder(childrenOf(each), SERIES_ORDER);
    for (const each of elements(xml, "c:valAx")) expectOrder(childrenOf(each), AXIS_ORDER);
  }
});

describe("charts of lines and marks", () => {
  const service = serviceReport([referralsTable(), scanTable(), stepsTable(), ratingsTable(), trendTable()]);
  const written = writeWorkbook(reportSheets(service), { created });
  const files = Object.entries(unzipSync(written)).map(([name, part]) => ({ name, xml: strFromU8(part) }));
  const charts = files.filter(({ name }) => /charts\/chart\d+\.xml$/.test(name)).map(({ xml }) => xml);
  const withText = (text: string) => charts.find((xml) => xml.includes(text)) ?? "";

  test("a second run gives the same bytes, and every chart has its message", () => {
    expect(Buffer.from(writeWorkbook(reportSheets(service), { created })).equals(Buffer.from(written))).toBe(true);
    const drawings = files.filter(({ name }) => /drawings\/drawing\d+\.xml$/.test(name)).map(({ xml }) => xml);
    const described = drawings.join("").match(/<xdr:cNvPr [^>]*descr="[^"]{80,}"/g) ?? [];
    expect(described).toHaveLength(charts.length);
    expect(described.join(" ")).toContain("North: 8 referrals, 4.0 expected, ratio 2.00");
    expect(described.join(" ")).toContain("January to March 2026 6 of 12");
    const texts = files.find(({ name }) => name === "xl/sharedStrings.xml")?.xml ?? "";
    expect(texts).toContain("Numbers behind the charts");
    expect(texts).toContain("River: 1 referral, 4.0 expected, ratio 0.25");
  });

  test("a line chart has its marks", () => {
    const symbols = withText("Share met, provisional").match(/<c:symbol val="\w+"\/>/g);
    expect(symbols?.map((each) => each.slice(15, -3))).toEqual(["circle", "circle", "circle"]);
  });

  test("a line that goes on after a stop is once in the legend", () => {
    const line = { top: 1, bottom: 2, left: 0, right: 0 };
    const series = [
      { name: "North", x: line, y: line, look: "joined" },
      { name: "North, after a stop", x: line, y: line, look: "joined", continues: true },
      { name: "River", x: line, y: line, look: "joinedDashed" },
    ] as const;
    const chart = { kind: "line", title: "Lines", altText: "Two lines", at: { row: 0, column: 2 } } as const;
    const size = { widthPixels: 300, heightPixels: 200, x: { title: "" }, y: { title: "" }, legend: "bottom" } as const;
    const sheet = {
      name: "Lines",
      columns: [{ width: 9 }],
      rows: [["n"], [1], [2]],
      charts: [{ ...chart, ...size, series }],
    };
    const parts = unzipSync(writeWorkbook([sheet], { created }));
    const xml = strFromU8(parts["xl/charts/chart1.xml"] as Uint8Array);
    const names = elements(xml, "c:ser").map((each) => /<c:v>([^<]*)/.exec(each)?.[1] ?? "");
    const left = [...xml.matchAll(/<c:legendEntry><c:idx val="(\d+)"\/><c:delete val="1"\/>/g)].map(([, at]) =>
      Number(at),
    );
    expect(names.filter((_, at) => !left.includes(at))).toEqual(["North", "River"]);
  });

  test("what was expected is a line over the columns, on the same axes", () => {
    const xml = withText("Other months");
    expect(xml).toMatch(/<c:barChart>.*<\/c:barChart><c:lineChart>.*<\/c:lineChart>/s);
    expect(xml.match(/<c:(valAx|catAx)>/g)).toEqual(["<c:catAx>", "<c:valAx>"]);
  });

  test("a name at a mark is the series' name alone, and a hidden axis has no lines", () => {
    const xml = withText("North, limits");
    expect(xml).toContain(
      '<c:showLegendKey val="0"/><c:showVal val="0"/><c:showCatName val="0"/><c:showSerName val="1"/>',
    );
    expect(xml).toContain('<c:delete val="1"/>');
    expect(xml).not.toContain("<c:majorGridlines>");
  });

  test("the scale of lying bars is on the axis of values", () => {
    const xml = withText("Plans due: 5 of 9");
    const [axis = ""] = elements(xml, "c:valAx");
    expect(axis).toContain('<c:max val="10"/>');
    expect(axis).toContain("<a:t>Referrals</a:t>");
    expect(elements(xml, "c:catAx").join("")).not.toContain("Referrals");
  });

  test("parts stand in the order of the schema", () => {
    for (const xml of charts) {
      for (const each of elements(xml, "c:ser")) expectOrder(childrenOf(each), SERIES_ORDER);
      for (const each of elements(xml, "c:valAx")) expectOrder(childrenOf(each), AXIS_ORDER);
    }
  });
});

/** Programs differ in what they take for granted: LibreOffice smooths a scatter line that says nothing. */
test("a curve says that its lines are straight, and blanks are gaps", () => {
  const scatter = chartParts.filter(({ xml }) => xml.includes("<c:scatterChart>"));
  expect(scatter).toHaveLength(3);
  for (const { xml } of scatter) {
    const series = elements(xml, "c:ser");
    expect(series.filter((each) => each.includes('<c:smooth val="0"/>'))).toHaveLength(series.length);
    expect(xml).toContain('<c:dispBlanksAs val="gap"/>');
  }
});

test("hostile labels are texts in cells, charts, sheet names and footers", () => {
  const evil = "='Sheet1'!A1 & \u0001<b>";
  const skills = report.print.skills.map((skill) => ({ ...skill, label: evil, basis: evil, area: "North!A1" }));
  const tool = { name: "R&D &P", version: "1" };
  const hostile = writeWorkbook(reportSheets({ ...report, tool, print: { ...report.print, skills } }), { created });
  const charts = Object.entries(unzipSync(hostile)).filter(([name]) => name.includes("charts/chart"));
  const text = charts.map(([, part]) => strFromU8(part)).join("");
  expect(text).not.toContain("<c:strRef><c:f>North");
  expect(text).toContain("='Sheet1'! A1");
  const sheet = strFromU8(unzipSync(hostile)["xl/worksheets/sheet1.xml"] as Uint8Array);
  expect(sheet).toContain("R&amp;&amp;D &amp;&amp;P");
  for (const [name, part] of Object.entries(unzipSync(hostile))) {
    if (name.includes("worksheets/sheet")) expect(strFromU8(part)).not.toMatch(/<f[ >/]/);
  }
});

componentTest(["soffice", "pdftotext"], "LibreOffice prints every sheet without a cut figure", () => {
  const folder = mkdtempSync(path.join(tmpdir(), "windowline-"));
  try {
    const file = path.join(folder, "report.xlsx");
    writeFileSync(file, bytes);
    const text = withConverted(file, "pdf", (pdf) => execFileSync("pdftotext", ["-layout", pdf, "-"]).toString());
    expect(text).not.toContain("###");
    for (const part of ["What the records say", "Page 1 of", "Walks some steps alone"]) {
      expect(text).toContain(part);
    }
    expect(readFileSync(file).length).toBe(bytes.length);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});

function partNamed(name: string): string {
  return parts.find((each) => each.name === name)?.xml ?? "";
}

function elements(xml: string, tag: string): string[] {
  return xml.match(new RegExp(`<${tag}>.*?</${tag}>`, "gs")) ?? [];
}

/** The names of an element's own children, in order. */
function childrenOf(element: string): string[] {
  const names: string[] = [];
  let depth = 0;
  for (const [, close, name, selfClosing] of element.matchAll(/<(\/?)([\w:]+)[^>]*?(\/?)>/g)) {
    if (close) depth -= 1;
    else {
      if (depth === 1) names.push(name as string);
      if (!selfClosing) depth += 1;
    }
  }
  return names;
}

function expectOrder(names: readonly string[], order: readonly string[]): void {
  const places = names.map((name) => order.indexOf(name));
  expect(places).not.toContain(-1);
  expect(places).toEqual([...places].sort((a, b) => a - b));
}
