import { LexerTreeBuilder } from "@univerjs/engine-formula";
import { answerOf, messageOf } from "../../../functions/elsewhere/answer";
import { CellMessages } from "../../../src/hosts/page/functions/messages";
import { mendLexer } from "../../../src/hosts/page/grid/mend-lexer";
import { type FromWorker, type ToWorker, WorkerCalls } from "../../../functions/elsewhere/worker-calls";

describe("an answer of a worksheet function", () => {
  /** September 30, 2026 is day 273 of its year, so 263 days after 10 January; born 84 days before the due date. AAP (2004), Pediatrics 114:1362-1364. */
  test("holds the rows to spill", () => {
    expect(answerOf("CORRECTEDAGE", ["2026-01-10", "28+0", "2026-09-30", "days"])).toEqual({ rows: [[179]] });
  });

  test("is an error with words where a cell cannot be read, and never a throw", () => {
    const answer = answerOf("AGE", ["x", 46_295]);
    expect(answer).toEqual({ error: "#VALUE!", message: expect.stringMatching(/^birth is not a date/) });
    expect(messageOf(answer)).toMatch(/^birth is not a date/);
    expect(answerOf("AGE", [{ odd: true } as never, 1])).toMatchObject({ error: "#VALUE!" });
  });

  test("keeps the errors of single rows in their cells", () => {
    const answer = answerOf("AGE", [[["2026-01-10"], ["x"]], "2026-09-30", "days"]);
    expect(answer).toEqual({ rows: [[263], [{ error: "#VALUE!", message: expect.any(String) }]] });
  });

  test.each([[[]], [[1]], [[1, 2, 3, 4]]])("names the arguments where too few or too many were given: %j", (args) => {
    expect(answerOf("AGE", args)).toMatchObject({ message: expect.stringMatching(/AGE takes birth, on, \[unit\]/) });
  });
});

describe("a large call", () => {
  test("reaches the worker in pieces and comes back whole", async () => {
    const { worker, sent } = fakeWorker();
    const rows = Array.from({ length: 12_000 }, (_, row) => [row]);
    const answer = await new WorkerCalls(() => worker).answer("AGE", [rows, 5, null], 1900);
    const pieces = sent.filter((message) => message.kind === "rows");
    expect(pieces.map((piece) => piece.rows.length)).toEqual([5_000, 5_000, 2_000]);
    expect(pieces.flatMap((piece) => piece.rows)).toEqual(rows);
    expect(sent.at(-1)).toMatchObject({ kind: "call", name: "AGE", args: [[], 5, null] });
    expect(answer).toEqual({ rows: [["done"]] });
  });

  test("is an error with words where the worker stops, and the next call starts another", async () => {
    const { worker } = fakeWorker(() => worker.onerror?.({} as ErrorEvent));
    const { worker: another } = fakeWorker();
    const workers = [worker, another];
    const calls = new WorkerCalls(() => workers.shift() as Worker);
    expect(await calls.answer("AGE", [1], 1900)).toMatchObject({ error: "#VALUE!" });
    expect(await calls.answer("AGE", [1], 1900)).toEqual({ rows: [["done"]] });
  });
});

test("messages are kept by cell and go when the cell is mended", () => {
  const messages = new CellMessages();
  messages.set("s", 2, 3, "why");
  expect([messages.at("s", 2, 3), messages.at("s", 23, 0), messages.at("t", 2, 3)]).toEqual(["why", null, null]);
  messages.set("s", 2, 3, null);
  expect(messages.at("s", 2, 3)).toBeNull();
});

/** The grid's own fault, and its mending: with the fault gone from a later version, the first half says so. */
test("a bracket left open while typing no longer joins the arguments of later formulas", () => {
  const argumentsOf = (formula: string) => {
    const lexer = new LexerTreeBuilder();
    lexer.treeBuilder("=SUM(Children[");
    return JSON.stringify((lexer.treeBuilder(formula) as { serialize(): unknown }).serialize()).match(/"P_1"/g)?.length;
  };
  expect(argumentsOf("=SUM(1,2)")).toBe(1);
  mendLexer(LexerTreeBuilder);
  expect(argumentsOf("=SUM(3,4)")).toBe(2);
});

function fakeWorker(onCall?: () => void) {
  const sent: ToWorker[] = [];
  const worker = {
    onmessage: null as ((event: MessageEvent<FromWorker>) => void) | null,
    onerror: null as ((event: ErrorEvent) => void) | null,
    terminate: () => undefined,
    postMessage(message: ToWorker) {
      sent.push(message);
      if (message.kind !== "call") return;
      const answer = { rows: [["done"]] };
      queueMicrotask(
        onCall ??
          (() => worker.onmessage?.({ data: { call: message.call, answer } } as unknown as MessageEvent<FromWorker>)),
      );
    },
  };
  return { worker: worker as unknown as Worker, sent };
}
