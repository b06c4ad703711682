/// <reference types="office-js" />
import { openInOffice } from "./office-globals";
import { startOffice } from "./in-node";
import type { RichApiHost } from "./protocol/rich-api-host";
import { MemoryWorkbook } from "./workbook/memory-workbook";

/**
 * Mistakes planted on purpose: each must be caught, or the tests of the adapter prove nothing. Source of the codes:
 * Microsoft, "Error handling with the application-specific JavaScript APIs".
 */
beforeAll(() => startOffice());

let workbook: MemoryWorkbook;
let host: RichApiHost;

beforeEach(() => {
  workbook = new MemoryWorkbook();
  workbook.addSheet("Children").put(0, 0, "Child");
  host = openInOffice(workbook);
});

async function codeOf(batch: (context: Excel.RequestContext) => Promise<unknown>): Promise<string> {
  try {
    await Excel.run(batch);
    return "nothing was caught";
  } catch (error) {
    return (error as { code?: string }).code ?? String(error);
  }
}

const firstCell = (context: Excel.RequestContext) => context.workbook.worksheets.getItem("Children").getRange("A1");

test("a property read without a load is caught", async () => {
  const code = await codeOf(async (context) => {
    const range = firstCell(context);
    await context.sync();
    return range.values;
  });
  expect(code).toBe("PropertyNotLoaded");
});

test("a property read before the sync is caught", async () => {
  const code = await codeOf(async (context) => firstCell(context).load("values").values);
  expect(code).toBe("PropertyNotLoaded");
});

test("another property than the one loaded is caught", async () => {
  const code = await codeOf(async (context) => {
    const range = firstCell(context).load("values");
    await context.sync();
    return range.numberFormat;
  });
  expect(code).toBe("PropertyNotLoaded");
});

test("a load of a property that is not there is caught", async () => {
  const code = await codeOf(async (context) => {
    firstCell(context).load("value");
    await context.sync();
  });
  expect(code).toBe("InvalidArgument");
});

test("a load that names nothing is refused", async () => {
  const code = await codeOf(async (context) => {
    firstCell(context).load();
    await context.sync();
  });
  expect(code).toBe("NotImplemented");
});

test("an array of another shape than the range is caught, and above 1,500 cells too", async () => {
  const small = await codeOf(async (context) => {
    firstCell(context).values = [["a", "b"]];
    await context.sync();
  });
  const large = await codeOf(async (context) => {
    const rows = Array.from({ length: 1999 }, () => [1]);
    context.workbook.worksheets.getItem("Children").getRangeByIndexes(0, 0, 2000, 1).values = rows;
    await context.sync();
  });
  expect([small, large]).toEqual(["InvalidArgument", "InvalidArgument"]);
});

test("an object used after its run is caught", async () => {
  let kept: Excel.Range | undefined;
  await Excel.run(async (context) => {
    kept = firstCell(context);
    await context.sync();
  });
  const code = await codeOf(async () => {
    kept?.load("values");
    await kept?.context.sync();
  });
  expect(code).toBe("InvalidObjectPath");
});

test("an object of another run as an argument is caught", async () => {
  let kept: Excel.Range | undefined;
  await Excel.run(async (context) => {
    kept = firstCell(context);
    await context.sync();
  });
  const code = await codeOf(async (context) => {
    context.workbook.worksheets.getItem("Children").charts.add("Line", kept as Excel.Range);
    await context.sync();
  });
  expect(code).toBe("InvalidRequestContext");
});

test("a member beyond ExcelApi 1.12 is caught before it is sent", async () => {
  const code = await codeOf(async (context) => {
    firstCell(context).getMergedAreasOrNullObject();
    await context.sync();
  });
  expect(code).toBe("ApiNotFound");
  expect(host.traffic).toEqual([]);
});

test("a request over 5 MB is refused, and nothing of it is done", async () => {
  const text = "x".repeat(30_000);
  const code = await codeOf(async (context) => {
    const rows = Array.from({ length: 170 }, () => [text]);
    context.workbook.worksheets.getItem("Children").getRangeByIndexes(0, 0, 170, 1).values = rows;
    await context.sync();
  });
  expect(code).toBe("RequestPayloadSizeLimitExceeded");
  expect(workbook.sheets[0]?.valueAt(0, 0)).toBe("Child");
});

test("a reply over 5 MB is refused", async () => {
  for (let row = 0; row < 170; row += 1) workbook.sheets[0]?.put(row, 0, "x".repeat(30_000));
  const code = await codeOf(async (context) => {
    context.workbook.worksheets.getItem("Children").getRangeByIndexes(0, 0, 170, 1).load("values");
    await context.sync();
  });
  expect(code).toBe("ResponsePayloadSizeLimitExceeded");
});

test("what the workbook has no answer for is refused, as a method, a property and an object", async () => {
  const sheetOf = (context: Excel.RequestContext) => context.workbook.worksheets.getItem("Children");
  const mistakes: ((context: Excel.RequestContext) => void)[] = [
    (context) => sheetOf(context).calculate(true),
    (context) => (sheetOf(context).tabColor = "#000000"),
    (context) => sheetOf(context).pivotTables.load("items/name"),
    (context) => (sheetOf(context).getRange("A1").format.font.name = "Arial"),
  ];
  for (const mistake of mistakes) {
    const code = await codeOf(async (context) => {
      mistake(context);
      await context.sync();
    });
    expect(code).toBe("NotImplemented");
  }
});

test("actions before the failing one keep their effect, as in Excel", async () => {
  const code = await codeOf(async (context) => {
    firstCell(context).values = [["Id"]];
    context.workbook.worksheets.getItem("No such sheet").getRange("A1").values = [["x"]];
    await context.sync();
  });
  expect(code).toBe("ItemNotFound");
  expect(workbook.sheets[0]?.valueAt(0, 0)).toBe("Id");
});

test("text is read as typed text is, unless an apostrophe or the text format keeps it", async () => {
  const typed = ["=1+1", "-5", "@x", "12", "TRUE", "1/2", "'=1+1", "plain"];
  await Excel.run(async (context) => {
    const sheet = context.workbook.worksheets.getItem("Children");
    sheet.getRangeByIndexes(1, 0, 1, typed.length).values = [typed];
    sheet.getRange("A3").numberFormat = [["@"]];
    sheet.getRange("A3").values = [["=1+1"]];
    await context.sync();
  });
  const [sheet] = workbook.sheets;
  const values = typed.map((_, column) => sheet?.valueAt(1, column));
  expect(values).toEqual(["#NAME?", -5, "#NAME?", 12, true, 45_000, "=1+1", "plain"]);
  expect([...(sheet?.formulas.values() ?? [])]).toEqual(["=1+1", "@x"]);
  expect(sheet?.valueAt(2, 0)).toBe("=1+1");
});
