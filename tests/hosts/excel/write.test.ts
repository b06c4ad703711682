import { readFileSync } from "node:fs";
import type { SheetOut } from "../../../src/workbook/sheets";
import { openInOffice } from "../../office/office-globals";
import { startOffice } from "../../office/in-node";
import type { RichApiHost } from "../../office/protocol/rich-api-host";
import type { MemorySheet } from "../../office/workbook/memory-sheet";
import { MemoryWorkbook } from "../../office/workbook/memory-workbook";
import { LEAP_DAY, LINES_SHEET, REPORT_SHEET } from "./report-sheet";
import { hasty, job } from "./support";

beforeAll(() => startOffice());

let book: MemoryWorkbook;
let host: RichApiHost;

function open(options?: ConstructorParameters<typeof MemoryWorkbook>[0]): void {
  book = new MemoryWorkbook(options);
  const own = book.addSheet("Children");
  ["Child", "Site"].forEach((heading, column) => own.put(0, column, heading));
  book.addTable(own, {
    name: "Kids",
    area: { top: 0, left: 0, bottom: 1, right: 1 },
    style: "",
    showHeaders: true,
    showTotals: false,
  });
  host = openInOffice(book);
}

beforeEach(() => open());

async function add(...sheets: SheetOut[]): Promise<MemorySheet> {
  const excel = hasty();
  const receipt = await excel.addSheets(sheets, await excel.read(job()), "September 30, 2026", job());
  const added = book.sheets.at(-sheets.length) as MemorySheet;
  expect(receipt.sheets[0]).toBe(added.name);
  return added;
}

const valuesOf = (sheet: MemorySheet, row: number, columns: number) =>
  Array.from({ length: columns }, (_, column) => sheet.valueAt(row, column));

const bare = (rows: SheetOut["rows"], columns: SheetOut["columns"] = []): SheetOut => ({
  name: "Plain",
  columns,
  rows,
});

test("values and number formats stand in their cells, days in the workbook's date system", async () => {
  for (const [dateSystem, serial] of [
    [1900, LEAP_DAY.serial1900],
    [1904, LEAP_DAY.serial1904],
  ] as const) {
    open({ dateSystem });
    const sheet = await add(REPORT_SHEET);
    expect(valuesOf(sheet, 3, 4)).toEqual(["Sits alone", serial, 0.75, 1204]);
    expect(valuesOf(sheet, 4, 4)).toEqual(["Walks", undefined, undefined, undefined]);
    expect(valuesOf(sheet, 6, 4)).toEqual(["All", undefined, 0.6, true]);
    expect([1, 2, 3].map((column) => sheet.formatAt(3, column))).toEqual(["yyyy-mm-dd_)_)", "0.0%_)_)", "#,##0_)_)"]);
  }
});

test("a day that Excel has no serial for is written as text", async () => {
  const rows = [[-25_568], [-25_567], [-24_108], [-24_107]];
  const before = await add(bare(rows, [{ width: 9, format: "date" }]));
  expect(rows.map((_, row) => before.valueAt(row, 0))).toEqual(["1899-12-31", 1, 1461, 1462]);
  open({ dateSystem: 1904 });
  const later = await add(bare(rows, [{ width: 9, format: "date" }]));
  expect(rows.map((_, row) => later.valueAt(row, 0))).toEqual(["1899-12-31", "1900-01-01", "1903-12-31", 0]);
});

test("every text stays a text, whatever Excel would read into it", async () => {
  const texts = [
    "=1+1",
    "+1",
    "-1",
    "@SUM(A1)",
    "\t=1",
    "\r=1",
    "'quoted",
    "12",
    "1/2",
    "3 March",
    "TRUE",
    "5%",
    "#N/A",
  ];
  const long = ["=".repeat(40_000), "a\u0000b", "two\nlines", "ä😀", '"\\'];
  const sheet = await add(bare([...texts, ...long].map((text) => [text])));
  expect(texts.map((_, row) => sheet.valueAt(row, 0))).toEqual(texts);
  expect(sheet.formulas.size).toBe(0);
  expect(sheet.prefixed.size).toBe(texts.length + long.length);
  expect(String(sheet.valueAt(texts.length, 0))).toHaveLength(32_766);
  expect([1, 2, 3, 4].map((more) => sheet.valueAt(texts.length + more, 0))).toEqual(["a\uFFFDb", ...long.slice(2)]);
});

test("looks, widths, heights and panes", async () => {
  const sheet = await add(REPORT_SHEET);
  const look = (row: number, column: number, ...names: string[]) =>
    names.map((name) => sheet.lookAt(row, column, name));
  expect(look(0, 0, "Font.Bold", "Font.Size", "WrapText")).toEqual([true, 16, true]);
  expect(look(2, 1, "Fill.Color", "HorizontalAlignment", "IndentLevel")).toEqual(["#EEF2F5", "Right", 1]);
  expect(look(2, 0, "EdgeBottom.Style", "HorizontalAlignment")).toEqual(["Continuous", "Left"]);
  expect(look(3, 0, "Font.Color", "HorizontalAlignment", "Fill.Color")).toEqual(["#1A1A1A", undefined, undefined]);
  expect(look(3, 2, "HorizontalAlignment")).toEqual(["Right"]);
  expect(look(6, 1, "Font.Italic", "Fill.Color")).toEqual([true, "#EEF2F5"]);
  // 30 characters of 7 pixels and 5 of padding, at 3/4 point (ECMA-376 Part 1, 18.3.1.13).
  expect(sheet.columnWidths.get(0)).toBe(161.25);
  expect(sheet.rowHeights.get(0)).toBe(25);
  expect(sheet.frozen).toEqual({ top: 0, left: 0, bottom: 2, right: 0 });
  expect(sheet.showGridlines).toBe(false);
  expect(sheet.merged).toContainEqual({ top: 0, left: 0, bottom: 0, right: 3 });
});

test("rows alone or columns alone are frozen", async () => {
  const rows = await add({ ...bare([["x"]]), frozen: { rows: 2, columns: 0 } });
  const columns = await add({ ...bare([["x"]]), frozen: { rows: 0, columns: 1 } });
  expect([rows.frozen?.bottom, rows.frozen?.right]).toEqual([1, -1]);
  expect([columns.frozen?.bottom, columns.frozen?.right]).toEqual([-1, 0]);
});

test("a table of figures takes few calls, empty cells in between or not", async () => {
  const rows = Array.from({ length: 3000 }, (_, row) => ["a", row % 3 === 0 ? null : row, 0.5]);
  const columns = [
    { width: 9, style: "text" as const },
    { width: 9, style: "text" as const, format: "count" as const },
  ];
  const sheet = await add(bare(rows, [...columns, { width: 9, style: "text", format: "share" }]));
  expect(sheet.formatAt(2999, 1)).toBe("#,##0_)_)");
  expect(host.traffic.length).toBeLessThan(40);
});

test("tables stand over their cells, under a name that is free", async () => {
  book.names.set("table_metbyband", { sheet: null, visible: true });
  const first = await add(REPORT_SHEET);
  const second = await add(REPORT_SHEET);
  expect(first.tables).toMatchObject([
    { name: "Table_MetByBand_2", style: "TableStyleLight1", area: { top: 2, left: 0, bottom: 5, right: 3 } },
  ]);
  expect(second.tables[0]?.name).toBe("Table_MetByBand_3");
});

test("a table of headings alone gets the empty row that Excel needs", async () => {
  const table = { name: "Table_Empty", range: { top: 0, left: 0, bottom: 0, right: 0 } };
  const sheet = await add({ ...bare([["Skill"]]), tables: [table] });
  expect(sheet.tables[0]?.area.bottom).toBe(1);
});

test.each([[["Skill", "skill"]], [["Skill", null]], [["Skill", 3]]])(
  "headings %j of a table are refused",
  async (row) => {
    const table = { name: "Table_Bad", range: { top: 0, left: 0, bottom: 1, right: 1 } };
    await expect(add({ ...bare([row, ["a", "b"]]), tables: [table] })).rejects.toThrow(RangeError);
    expect(book.sheets.map(({ name }) => name)).toEqual(["Children"]);
  },
);

test("charts: kind, series, looks, axes and place", async () => {
  const { charts } = await add(REPORT_SHEET);
  const [bars, curve] = charts;
  expect(charts.map(({ type }) => type)).toEqual(["BarStacked100", "XYScatterLines"]);
  expect(bars?.series.map(({ name, values, xValues }) => [name, values.area.left, xValues?.area.left])).toEqual([
    ["Met", 2, 0],
    ["Children", 3, 0],
  ]);
  const of = (chart: typeof bars, ...names: string[]) => names.map((name) => chart?.properties.get(name));
  expect(of(bars, "Title.Text", "At", "Width", "Height")).toEqual([
    "Each area, all ages",
    { row: 8, column: 0 },
    240,
    150,
  ]);
  expect(of(bars, "ValueAxis.Minimum", "ValueAxis.Maximum", "ValueAxis.MajorUnit")).toEqual([0, 1, 0.25]);
  expect(of(bars, "ValueAxis.NumberFormat", "ValueAxis.Title.Text")).toEqual(["0%", "Share of children"]);
  expect(of(bars, "CategoryAxis.ReversePlotOrder", "CategoryAxis.Title.Visible")).toEqual([true, false]);
  expect(of(bars, "Legend.Visible", "Legend.Position")).toEqual([true, "Bottom"]);
  expect(of(curve, "Legend.Visible")).toEqual([false]);
  expect(curve?.series.map(({ properties }) => properties.get("MarkerStyle"))).toEqual([
    "None",
    "Diamond",
    "None",
    "None",
  ]);
});

test("lines over columns, marks of every shape, names at their marks, and an axis that is not drawn", async () => {
  const { charts } = await add(LINES_SHEET);
  const [columns, lines, points, lying] = charts;
  const of = (chart: typeof columns, name: string) => chart?.series.map(({ properties }) => properties.get(name));
  expect(charts.map(({ type }) => type)).toEqual(["ColumnStacked", "Line", "XYScatterLines", "BarStacked"]);
  expect(of(columns, "ChartType")).toEqual([undefined, undefined, "Line"]);
  expect(of(columns, "GapWidth")).toEqual([45, 45, undefined]);
  expect(of(columns, "Format.Line.LineStyle")?.[2]).toBe("Dash");
  expect(of(lines, "MarkerStyle")).toEqual(["Dash", "Circle", "Circle"]);
  expect(of(lines, "Format.Line.LineStyle")).toEqual(["None", "Continuous", "None"]);
  const [, joined, light] = of(lines, "MarkerBackgroundColor")?.map(String) ?? [];
  expect(lightness(light ?? "") - lightness(joined ?? "")).toBeGreaterThan(20);
  expect(of(points, "HasDataLabels")).toEqual([undefined, undefined, true]);
  expect(of(points, "DataLabels.ShowSeriesName")?.[2]).toBe(true);
  expect(of(points, "DataLabels.ShowValue")?.[2]).toBe(false);
  expect(points?.properties.get("ValueAxis.Visible")).toBe(false);
  expect(["Minimum", "Maximum", "MajorUnit"].map((name) => lying?.properties.get(`ValueAxis.${name}`))).toEqual([
    0, 8, 2,
  ]);
});

test("bars that are told apart by pattern in a file are told apart by lightness in Excel", async () => {
  const looks = ["solid", "striped", "hollow", "lined", "crossed", "pale"] as const;
  const [chart] = REPORT_SHEET.charts ?? [];
  const [series] = chart?.series ?? [];
  if (!chart || !series) throw new Error("the report sheet has no chart");
  const drawn = { ...chart, series: looks.map((look) => ({ ...series, name: look, look })) };
  const sheet = await add({ ...REPORT_SHEET, charts: [drawn] });
  const greys = (sheet.charts[0]?.series ?? []).map(({ properties }) =>
    lightness(String(properties.get("Format.Fill.SolidColor"))),
  );
  const ordered = [...greys].sort((a, b) => a - b);
  expect(ordered).toHaveLength(6);
  // A step of 3% or more in CIE lightness is seen side by side (common practice, no source); here it is 8.
  for (let at = 1; at < 6; at += 1) expect((ordered[at] as number) - (ordered[at - 1] as number)).toBeGreaterThan(8);
});

/** CIE L*, from the relative luminance of WCAG 2.2. */
function lightness(colour: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5]
    .map((at) => Number.parseInt(colour.slice(at, at + 2), 16) / 255)
    .map((each) => (each <= 0.04045 ? each / 12.92 : ((each + 0.055) / 1.055) ** 2.4));
  return 116 * Math.cbrt(0.2126 * r + 0.7152 * g + 0.0722 * b) - 16;
}

test("each chart's message stands in the first free cells below it", async () => {
  const sheet = await add(REPORT_SHEET);
  // 200 pixels are ten rows of the usual 20: the charts cover rows 9 to 18.
  expect(sheet.valueAt(18, 0)).toBe("Stacked bars: three in four children have met the skill.");
  expect(sheet.valueAt(18, 3)).toBe("A line that rises from 5 to 9 months.");
  expect(sheet.merged).toContainEqual({ top: 18, left: 0, bottom: 18, right: 2 });
});

test("every chart has its message in a cell, one below the other where they share a place", async () => {
  const sheet = await add(LINES_SHEET);
  const texts = Array.from({ length: 30 }, (_, row) => String(sheet.valueAt(row, 0) ?? ""));
  for (const { altText } of LINES_SHEET.charts ?? []) expect(texts).toContain(altText);
});

test("a message finds its place below other cells", async () => {
  const rows = [...REPORT_SHEET.rows, ...Array.from({ length: 14 }, () => ["taken"])];
  const sheet = await add({ ...REPORT_SHEET, rows });
  expect(sheet.valueAt(18, 0)).toBe("taken");
  expect(sheet.valueAt(21, 0)).toBe("Stacked bars: three in four children have met the skill.");
});

test("the page: landscape, repeated rows, footer, area", async () => {
  const { page } = await add(REPORT_SHEET);
  expect(Object.fromEntries(page)).toMatchObject({
    Orientation: "Landscape",
    PaperSize: "Letter",
    Zoom: { horizontalFitToPages: 1 },
    PrintTitleRows: "$3:$3",
    PrintArea: { top: 0, left: 0, bottom: 30, right: 3 },
    LeftHeader: "Alder Fork",
    LeftFooter: "Birth && beyond, as of 2026-09-30",
    RightFooter: "Page &P of &N",
  });
  const footer = `${"x".repeat(199)}&&&`;
  const cut = await add({ ...REPORT_SHEET, print: { landscape: false, fit: "one page", footer } });
  expect(cut.page.get("LeftFooter")).toBe("x".repeat(199));
  expect(cut.page.get("Zoom")).toEqual({ horizontalFitToPages: 1, verticalFitToPages: 1 });
});

test("names are fresh and fit for Excel, without regard to case", async () => {
  await add({ ...bare([["x"]]), name: "CHILDREN" }, { ...bare([["x"]]), name: "Met: by/age group?" });
  await add({ ...bare([["x"]]), name: "Met by age group" });
  expect(book.sheets.map(({ name }) => name)).toEqual([
    "Children",
    "CHILDREN (2)",
    "Met by age group",
    "Met by age group (2)",
  ]);
});

test("much text goes in requests below 1 MB", async () => {
  const rows = Array.from({ length: 40_000 }, (_, row) =>
    Array.from({ length: 10 }, (_, column) => `s${row + column}ä`),
  );
  const sheet = await add(bare(rows));
  expect(sheet.valueAt(39_999, 9)).toBe("s40008ä");
  expect(sheet.valueAt(20_000, 0)).toBe("s20000ä");
  expect(Math.max(...host.traffic.map(({ request }) => request))).toBeLessThan(1_000_000);
}, 60_000);

test("long texts go in requests of 1 MB, a long row in pieces", async () => {
  const long = (row: number, column: number) => `${row}/${column}${"ä".repeat(30_000)}`;
  const rows = [["a"], Array.from({ length: 60 }, (_, column) => long(1, column)), ["b"]];
  const sheet = await add(bare(rows));
  expect([sheet.valueAt(0, 0), sheet.valueAt(2, 0)]).toEqual(["a", "b"]);
  expect(valuesOf(sheet, 1, 60)).toEqual(rows[1]);
  expect(Math.max(...host.traffic.map(({ request }) => request))).toBeLessThan(1_000_000);
});

test("the user's own sheets keep every byte", async () => {
  const before = book.sheets[0]?.snapshot();
  await add(REPORT_SHEET, REPORT_SHEET);
  expect(book.sheets[0]?.snapshot()).toBe(before);
  expect(book.sheets).toHaveLength(3);
});

/** The level that Microsoft's own reference, the types, gives for each member. */
test("no member is above ExcelApi 1.12", async () => {
  await add(REPORT_SHEET, LINES_SHEET);
  const types = readFileSync("node_modules/@types/office-js/index.d.ts", "utf8");
  const excel = types.slice(types.indexOf("declare namespace Excel"));
  const levels = [...host.used].flatMap((member) => {
    const [type = "", name = ""] = member.replace(".Gridlines", ".ShowGridlines").split(".");
    // Called by office.js itself.
    if (name.startsWith("_")) return [];
    const level = levelOf(excel, type, name.charAt(0).toLowerCase() + name.slice(1));
    return [{ member, level }];
  });
  expect(levels.length).toBeGreaterThan(60);
  expect(levels.filter(({ level }) => level === null || level > 12)).toEqual([]);
  expect(Math.max(...levels.map(({ level }) => level ?? 0))).toBe(12);
});

function levelOf(types: string, type: string, member: string): number | null {
  const start = types.search(new RegExp(`^    class ${type}[ <]`, "m"));
  if (start < 0) return null;
  const body = types.slice(start, start + types.slice(start).search(/^ {4}}/m));
  const at = body.search(new RegExp(`^ {8}(readonly )?${member}[(:?]`, "m"));
  const level = /\[Api set: ExcelApi 1\.(\d+)/.exec(body.slice(body.lastIndexOf("/**", at), at))?.[1];
  const ofClass = /\[Api set: ExcelApi 1\.(\d+)/.exec(types.slice(types.lastIndexOf("/**", start), start))?.[1];
  return at < 0 ? null : Number(level ?? ofClass);
}
