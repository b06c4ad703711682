import { startOffice } from "../../office/in-node";
import { openInOffice } from "../../office/office-globals";
import { MANIFEST_SETS } from "../../office/rich-client";
import { MemoryWorkbook } from "../../office/workbook/memory-workbook";
import { hasty, job } from "./support";

beforeAll(() => startOffice({ ...MANIFEST_SETS, excelapi: "1.13" }));

test("merged areas are read from ExcelApi 1.13 on, on sheets that have some", async () => {
  const book = new MemoryWorkbook();
  book.addSheet("Plain").put(0, 0, "x");
  const wide = book.addSheet("Wide");
  wide.put(0, 0, "Gross motor");
  wide.put(2, 4, 1);
  const areas = [
    { top: 0, left: 0, bottom: 0, right: 2 },
    { top: 1, left: 3, bottom: 2, right: 3 },
  ];
  wide.merged.push(...areas);
  openInOffice(book);
  const { sheets } = await hasty().read(job());
  expect(sheets.map(({ merged }) => merged)).toEqual([[], areas]);
});
