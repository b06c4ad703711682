import fc from "fast-check";
import { referralSteps } from "../../src/tables/referral-steps";
import { addDays } from "../oracle/calendar";
import { child, program } from "../oracle/programs";
import { contextFrom, entriesOf, rowsOf, workbookWith } from "./referrals-book";

const AS_OF = "2024-06-30";
const HEADINGS = ["Child", "Referred", "Area", "Received", "Evaluated", "Eligible", "Plan", "Late reason", "Closed"];

interface Row {
  readonly referred: string;
  readonly received?: string;
  readonly evaluated?: string;
  readonly eligible?: string;
  readonly plan?: string;
  readonly late?: string;
  readonly closed?: string;
}

/** One child a referral, all followed from birth on. */
function tableOf(rows: readonly Row[], asOf = AS_OF) {
  const children = rows.map((_, at) => child(`C${at}`, "2022-01-01"));
  const input = program(children.length > 0 ? children : [child("C", "2022-01-01")], [], {
    settings: { asOf, from: "2022-01-01" },
  });
  const cells = rows.map((row, at) => [
    ...[`C${at}`, row.referred, "speech", row.received, row.evaluated],
    ...[row.eligible, row.plan, row.late, row.closed],
  ]);
  const table = referralSteps(contextFrom(workbookWith(input, { Referrals: [HEADINGS, ...cells] }), entriesOf(input)));
  return new Map(rowsOf(table).map((row) => [String(row.step), row]));
}

/** Due days are 45 calendar days after referral: 34 CFR 303.310, read; dates of a calendar, by hand. */
describe("published: 45 days (34 CFR 303.310)", () => {
  const due = [
    ["2023-01-17", "2023-03-03"],
    ["2024-02-01", "2024-03-17"],
    ["2024-02-29", "2024-04-14"],
    ["2023-11-20", "2024-01-04"],
  ] as const;

  test.each(due)("referred %s: a plan on %s is in time, the day after is late", (referred, day) => {
    expect(tableOf([{ referred, plan: day }]).get("plan")).toMatchObject({ within45: 1, of45: 1 });
    expect(tableOf([{ referred, plan: addDays(day, 1) }]).get("plan")).toMatchObject({ within45: 0, of45: 1 });
  });

  test.each(due)("referred %s and still open: nothing to judge on %s, late the day after", (referred, day) => {
    expect(tableOf([{ referred }], day).get("plan")).toMatchObject({ within45: 0, of45: 0 });
    expect(tableOf([{ referred }], addDays(day, 1)).get("plan")).toMatchObject({ within45: 0, of45: 1 });
  });

  test("late for a reason of the family is the exception: not among the judged, in a row of its own", () => {
    const late = { referred: "2024-01-01", plan: "2024-03-01" };
    const rows = tableOf([{ ...late, late: "family" }, { ...late, late: "program" }, late]);
    expect(rows.get("plan")).toMatchObject({ within45: 0, of45: 2 });
    expect(rows.get("late, family reason")).toMatchObject({ count: 1, of: 3 });
    expect(rows.get("late, program reason")).toMatchObject({ count: 1, of: 3 });
    expect(rows.get("late, no reason named")).toMatchObject({ count: 1, of: 3 });
  });

  test("the days run from receipt, which stands as the day of referral where blank", () => {
    expect(tableOf([{ referred: "2024-01-01", received: "2024-01-11", plan: "2024-02-25" }]).get("plan")).toMatchObject(
      {
        within45: 1,
        medianDays: 45,
      },
    );
  });

  test("closed in time without a plan, or found not eligible: nothing to judge; closed too late: late", () => {
    const at = (more: Partial<Row>) => tableOf([{ referred: "2024-01-01", ...more }]).get("plan")?.of45;
    expect(at({ closed: "2024-02-15" })).toBe(0);
    expect(at({ evaluated: "2024-03-01", eligible: "no" })).toBe(0);
    expect(at({ closed: "2024-02-16" })).toBe(1);
  });
});

describe("by hand", () => {
  const rows = tableOf([
    { referred: "2024-01-01", evaluated: "2024-01-11", eligible: "yes", plan: "2024-01-21" },
    { referred: "2024-01-01", evaluated: "2024-01-21", eligible: "yes", plan: "2024-02-10" },
    { referred: "2024-01-01", evaluated: "2024-01-31", eligible: "no" },
    { referred: "2024-06-01" },
    { referred: "2024-06-20", received: "2024-07-02" },
    { referred: "2024-06-01", evaluated: "2024-06-11" },
  ]);

  test("each step with its own denominator", () => {
    const steps = ["referred", "received", "evaluated", "eligible", "plan"];
    expect(steps.map((step) => [rows.get(step)?.count, rows.get(step)?.of])).toEqual([
      [6, 6],
      [5, 6],
      [4, 5],
      [2, 3],
      [2, 2],
    ]);
  });

  test("median to the evaluation: 10, 10, 20, (29 open), 30 days: half of five by the third", () => {
    expect(rows.get("evaluated")?.medianDays).toBe(20);
  });

  test("median to the plan: 20, (29 open), (29 open), 40: 3/4 wait after 20 days, none after 40", () => {
    expect(rows.get("plan")?.medianDays).toBe(40);
  });

  test("dropping the open ones would say 20 days; a third open one leaves no median", () => {
    const open = (n: number) => Array.from({ length: n }, () => ({ referred: "2024-06-01" }));
    const plan = { referred: "2024-01-01", plan: "2024-01-21" };
    expect(tableOf([plan, ...open(1)]).get("plan")?.medianDays).toBe(20);
    expect(tableOf([plan, ...open(2)]).get("plan")?.medianDays).toBeNull();
  });

  test("no referral: no share, no median", () => {
    expect(tableOf([]).get("plan")).toMatchObject({ count: 0, of: 0, share: null, medianDays: null, of45: 0 });
  });
});

test("seven days later in every date changes nothing", () => {
  const day = fc.nat(150).map((days) => addDays("2024-01-01", days));
  const row = fc.record({
    referred: day,
    evaluated: fc.option(day, { nil: undefined }),
    eligible: fc.constantFrom("yes", "no", undefined),
    plan: fc.option(day, { nil: undefined }),
    late: fc.constantFrom("family", "program", undefined),
    closed: fc.option(day, { nil: undefined }),
  });
  const later = (rows: readonly Record<string, string | undefined>[]) =>
    rows.map((each) =>
      Object.fromEntries(
        Object.entries(each).map(([key, value]) => [key, value?.startsWith("20") ? addDays(value, 7) : value]),
      ),
    );
  fc.assert(
    fc.property(fc.array(row, { minLength: 1, maxLength: 8 }), (rows) => {
      const now = tableOf(rows as Row[]);
      expect([...tableOf(later(rows) as unknown as Row[], addDays(AS_OF, 7))]).toEqual([...now]);
      const of = (step: string) => Number(now.get(step)?.of);
      const count = (step: string) => Number(now.get(step)?.count);
      expect(of("received")).toBe(count("referred"));
      expect(of("evaluated")).toBe(count("received"));
      expect(of("eligible")).toBeLessThanOrEqual(count("evaluated"));
      expect(of("plan")).toBe(count("eligible"));
    }),
    { numRuns: 60 },
  );
});
