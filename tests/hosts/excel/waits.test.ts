import { openInOffice } from "../../office/office-globals";
import { startOffice } from "../../office/in-node";
import type { RichApiHost } from "../../office/protocol/rich-api-host";
import { MemoryWorkbook } from "../../office/workbook/memory-workbook";
import { REPORT_SHEET } from "./report-sheet";
import { failureOf, hasty, job } from "./support";

beforeAll(() => startOffice());

let book: MemoryWorkbook;
let host: RichApiHost;

beforeEach(() => {
  book = new MemoryWorkbook();
  book.addSheet("Children").put(0, 0, "Child");
  host = openInOffice(book);
});

describe("a request that is never answered", () => {
  test("ends with a sentence where nobody can cancel", async () => {
    host.fault = () => ({ at: "lost" });
    const failure = await failureOf(hasty({ answerMs: 60 }).receipts());
    expect(failure).toEqual({ kind: "unanswered", message: expect.stringContaining("Excel has not answered yet") });
  });

  test("is told to who can cancel, and the cancel is obeyed at once", async () => {
    host.fault = () => ({ at: "lost" });
    const options = job();
    const reading = failureOf(hasty({ tellMs: 50 }).read(options));
    await new Promise((resolve) => setTimeout(resolve, 80));
    expect(options.steps.map(({ step }) => step)).toEqual([expect.stringContaining("Excel has not answered yet")]);
    const cancelled = performance.now();
    options.cancel();
    expect((await reading).message).toBe("cancelled by the user");
    expect(performance.now() - cancelled).toBeLessThan(1000);
  });
});

describe("a busy Excel", () => {
  /** Codes of Microsoft's reference, "Error handling with the application-specific JavaScript APIs". */
  test.each(["ActivityLimitReached", "Conflict", "RequestAborted", "ServiceNotAvailable"])(
    "is asked again after %s, with growing waits",
    async (code) => {
      const asked: number[] = [];
      host.fault = (request) => {
        asked.push(performance.now());
        return request < 3 ? { at: "before", code } : null;
      };
      expect(await hasty({ retryMs: 20 }).name()).toBe("Book.xlsx");
      const waits = asked.slice(1).map((at, index) => at - (asked[index] as number));
      expect(waits).toHaveLength(3);
      // 20, 40 and 80 milliseconds; a timer may be late, never early
      expect(waits.every((wait, index) => wait >= 20 * 2 ** index - 2)).toBe(true);
    },
  );

  test("that stays busy ends with a sentence", async () => {
    host.fault = () => ({ at: "before", code: "ActivityLimitReached" });
    const failure = await failureOf(hasty().name());
    expect(failure).toEqual({ kind: "busy", message: expect.stringContaining("Excel is busy") });
  });
});

describe("another workbook in front", () => {
  test("is waited for with the sheets half made, which are then finished", async () => {
    const excel = hasty({ mostRetries: 50 });
    const from = await excel.read(job());
    const options = job();
    let left = 0;
    const onProgress: typeof options.onProgress = (progress) => {
      options.onProgress(progress);
      if (progress.step === "Adding the sheets") book.isBehind = true;
      else if (book.isBehind && (left += 1) % 3 === 0) book.isBehind = false;
    };
    await excel.addSheets([REPORT_SHEET, REPORT_SHEET], from, "label", { ...options, onProgress });
    expect(options.steps.some(({ step }) => step.includes("in front again"))).toBe(true);
    const [first, second] = book.sheets.slice(1);
    expect(second?.charts).toHaveLength(first?.charts.length ?? -1);
    expect(second?.tables).toHaveLength(first?.tables.length ?? -1);
    expect(second?.showGridlines).toBe(first?.showGridlines);
    expect(book.sheets).toHaveLength(3);
  });

  test("that stays there ends with a sentence, and an internal error of its own is no such thing", async () => {
    const excel = hasty();
    const from = await excel.read(job());
    book.isBehind = true;
    expect((await failureOf(excel.addSheets([REPORT_SHEET], from, "label", job()))).kind).toBe(
      "behind another workbook",
    );
    book.isBehind = false;
    let requests = 0;
    host.fault = () => ((requests += 1) === 1 ? { at: "before", code: "GeneralException" } : null);
    expect((await failureOf(excel.receipts())).kind).toBe("unknown");
  });
});

test("a workbook that Excel does not let be read is said in words of reading", async () => {
  host.fault = () => ({ at: "before", code: "AccessDenied" });
  const failure = await failureOf(hasty().read(job()));
  expect(failure).toEqual({ kind: "locked", message: expect.stringContaining("Enable Editing") });
});
