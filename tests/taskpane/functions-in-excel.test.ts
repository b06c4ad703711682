import { setDateSystem } from "../../functions/date-system";
import { FUNCTIONS } from "../../functions/registry";
import { answerOf } from "../../functions/elsewhere/answer";
import { WORKER_FROM_ROWS } from "../../functions/elsewhere/worker-calls";
import { associate, openFunctions } from "../../functions/associate";
import { answererOver } from "../../taskpane/functions-in-excel";

const registered = new Map<string, (...args: unknown[]) => unknown>();
const asked: { name: string; args: readonly unknown[]; dateSystem: number }[] = [];

class ExcelError {
  constructor(
    readonly code: string,
    readonly message: string,
  ) {}
}

const stopped: string[] = [];

const calls = {
  answer: async (name: string, args: readonly unknown[], dateSystem: 1900 | 1904, canceled?: AbortSignal) => {
    asked.push({ name, args, dateSystem });
    canceled?.addEventListener("abort", () => stopped.push(name));
    // The worker knows no CustomFunctions.
    const excel = (globalThis as { CustomFunctions?: unknown }).CustomFunctions;
    delete (globalThis as { CustomFunctions?: unknown }).CustomFunctions;
    const answer = answerOf(name, args);
    Object.assign(globalThis, { CustomFunctions: excel });
    return answer;
  },
};

beforeAll(() => {
  const register = (name: string, fn: (...args: unknown[]) => unknown) => registered.set(name, fn);
  const ErrorCode = { invalidValue: "#VALUE!", notAvailable: "#N/A", invalidNumber: "#NUM!" };
  Object.assign(globalThis, { CustomFunctions: { associate: register, Error: ExcelError, ErrorCode } });
  for (const [name, { fn }] of FUNCTIONS) associate(name, fn);
});

afterAll(() => {
  delete (globalThis as { CustomFunctions?: unknown }).CustomFunctions;
});

const weeks = (rows: number) => Array.from({ length: rows }, (_, row) => [20 + (row % 20)]);

/** Day 0 is January 1, 1904 in the 1904 system (ECMA-376 Part 1, 18.17.4.1): the age is 31 days, by hand. */
test("a call that comes before the date system is known waits, and is answered in it", async () => {
  const early = registered.get("AGE")!([[0.5]], [["1904-02-01"]], "days", { address: "A1" });
  const order: string[] = [];
  void (early as Promise<unknown>).then(() => order.push("answered"));
  await new Promise((resolve) => setTimeout(resolve, 5));
  setDateSystem(1904);
  order.push("known");
  openFunctions(answererOver(calls));
  expect(await early).toEqual([[31]]);
  expect(order).toEqual(["known", "answered"]);
  setDateSystem(1900);
});

test("every function is registered, and a small call is answered at once", () => {
  expect([...registered.keys()]).toEqual([...FUNCTIONS.keys()]);
  expect(registered.get("GESTATIONDAYS")!(weeks(2), { address: "A1" })).toEqual([[140], [147]]);
  expect(asked).toEqual([]);
});

test("a large call goes elsewhere without Excel's own object, and says the same", async () => {
  setDateSystem(1904);
  const rows = weeks(WORKER_FROM_ROWS);
  const answer = await registered.get("GESTATIONDAYS")!(rows, { address: "A1" });
  expect(asked).toEqual([{ name: "GESTATIONDAYS", args: [rows], dateSystem: 1904 }]);
  expect(answer).toEqual(FUNCTIONS.get("GESTATIONDAYS")!.fn(rows));
  setDateSystem(1900);
});

test("errors come back as Excel's own, in a cell or for the whole call", async () => {
  const rows = [...weeks(WORKER_FROM_ROWS), ["soon"]];
  const cells = (await registered.get("GESTATIONDAYS")!(rows)) as unknown[][];
  expect(cells.at(-1)![0]).toMatchObject({ code: "#VALUE!", message: expect.stringMatching(/gestation/) });
  const ages = weeks(WORKER_FROM_ROWS);
  await expect(registered.get("AGEWHENMET")!(ages, [[1]], null, null, null, null)).rejects.toMatchObject({
    code: "#VALUE!",
  });
});

/** Source of onCanceled: Microsoft, "CustomFunctions.CancelableInvocation interface", Office Add-ins reference. */
test("what Excel cancels is stopped", async () => {
  const invocation: { onCanceled?: () => void } = {};
  const answer = registered.get("GESTATIONDAYS")!(weeks(WORKER_FROM_ROWS + 1), invocation);
  expect(stopped).toEqual([]);
  invocation.onCanceled!();
  expect(stopped).toEqual(["GESTATIONDAYS"]);
  await answer;
});
