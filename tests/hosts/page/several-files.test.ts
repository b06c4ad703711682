import { dayFromIso } from "../../../src/age/day";
import { PageWorkbook } from "../../../src/hosts/page/page-workbook";
import { readRecords } from "../../../src/records/read-records";
import { oneWorkbook, withOwnNames } from "../../../src/workbook/sources";
import { book, CHILDREN, clean, serial, settingsOf, sheet } from "../../records/book";
import { quietly } from "./books";
import { MemoryGrid } from "./memory-grid";

const hill = [sheet("Kids", [CHILDREN[0]!, ["B1", serial("2025-02-01", 1904), null, "Hill", "T9", null, null, null]])];
const several = withOwnNames(
  oneWorkbook([
    { file: "NORTH.xlsx", workbook: book(clean()) },
    { file: "HILL.xlsx", workbook: book(hill, 1904) },
  ]),
);

test("sheets of one name are told apart by their file; others keep their names", () => {
  expect(several.sheets.map(({ name }) => name)).toEqual(["Kids (NORTH)", "Looks", "List", "Kids (HILL)"]);
  expect(withOwnNames(book(clean())).sheets.map(({ name }) => name)).toEqual(["Kids", "Looks", "List"]);
});

test("several files in one grid are read back as several files, each in its own date system", async () => {
  const opened = { name: "NORTH.xlsx and HILL.xlsx", workbook: several };
  const host = await PageWorkbook.open(new MemoryGrid().asPageGrid(), opened, quietly());
  const records = readRecords(await host.read(quietly()), settingsOf());
  const children = records.input.filter(({ table }) => table === "Children");
  expect(children.map(({ file, sheet: name, used }) => [file, name, used])).toEqual([
    ["NORTH.xlsx", "Kids (NORTH)", 3],
    ["HILL.xlsx", "Kids (HILL)", 1],
  ]);
  expect(records.children.birth[3]).toBe(dayFromIso("2025-02-01"));
});
