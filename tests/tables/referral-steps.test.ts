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

  test.each(due)("referred %s: evaluated on %s is in time, the day after is late", (referred, day) => {
    const evaluatedOn = (evaluated: string) => tableOf([{ referred, evaluated }]).get("evaluated");
    expect(evaluatedOn(day)).toMatchObject({ within45: 1, of45: 1 });
    expect(evaluatedOn(addDays(day, 1))).toMatchObject({ within45: 0, of45: 1 });
  });

  test.each(due)("referred %s: judged from the day after %s on, quick plan or none", (referred, day) => {
    for (const plan of [undefined, addDays(referred, 3)]) {
      const row = { referred, ...(plan === undefined ? {} : { plan }) };
      expect(tableOf([row], day).get("plan")).toMatchObject({ within45: 0, of45: 0 });
      expect(tableOf([row], addDays(day, 1)).get("plan")).toMatchObject({ within45: plan ? 1 : 0, of45: 1 });
    }
  });

  test("3 judged, 0 in time: 1 late for the family, 1 for the program, 1 without a reason", () => {
    const late = { referred: "2024-01-01", plan: "2024-03-01" };
    const rows = tableOf([{ ...late, late: "family" }, { ...late, late: "program" }, late]);
    expect(rows.get("plan")).toMatchObject({ within45: 0, of45: 3 });
    expect(rows.get("late, family reason")).toMatchObject({ count: 1, of: 3 });
    expect(rows.get("late, program reason")).toMatchObject({ count: 1, of: 3 });
    expect(rows.get("late, no reason named")).toMatchObject({ count: 1, of: 3 });
    expect(rows.get("closed before day 45")).toMatchObject({ count: 0, of: 3 });
  });

  test("the days run from receipt, which is the day of referral where blank", () => {
    const received = { referred: "2024-01-01", received: "2024-01-11", plan: "2024-02-25" };
    expect(tableOf([received]).get("plan")).toMatchObject({ within45: 1, medianDays: 45 });
  });

  test("closed on day 45 without a plan: closed, whatever reason is named; on day 46: late", () => {
    const at = (closed: string) => tableOf([{ referred: "2024-01-01", closed, late: "family" }]);
    expect(at("2024-02-15").get("closed before day 45")).toMatchObject({ count: 1, of: 1 });
    expect(at("2024-02-15").get("late, family reason")).toMatchObject({ count: 0, of: 1 });
    expect(at("2024-02-16").get("closed before day 45")).toMatchObject({ count: 0, of: 1 });
    expect(at("2024-02-16").get("late, family reason")).toMatchObject({ count: 1, of: 1 });
  });

  test("closing ends the wait: a plan dated after it is not in time, one on the day of closing is", () => {
    const plan = (closed: string) => tableOf([{ referred: "2024-01-01", plan: "2024-01-31", closed }]);
    expect(plan("2024-01-20").get("plan")).toMatchObject({ within45: 0, of45: 1, medianDays: null });
    expect(plan("2024-01-20").get("closed before day 45")).toMatchObject({ count: 1 });
    expect(plan("2024-01-31").get("plan")).toMatchObject({ within45: 1, of45: 1, medianDays: 30 });
  });

  test("found not eligible: no plan is due, but the evaluation is judged, and late where it was", () => {
    const rows = tableOf([{ referred: "2024-01-01", evaluated: "2024-03-01", eligible: "no" }]);
    expect(rows.get("plan")).toMatchObject({ within45: 0, of45: 0, shareBy45: 0 });
    expect(rows.get("evaluated")).toMatchObject({ within45: 0, of45: 1, shareBy45: 0 });
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
      [6, 6],
      [4, 6],
      [2, 3],
      [2, 2],
    ]);
  });

  test("median to the evaluation: 10, 10 (open), 10, 20, 29 (open), 30 days: 4/6 wait after day 10, 4/6 x 2/3 = 4/9 after day 20", () => {
    expect(rows.get("evaluated")?.medianDays).toBe(20);
  });

  test("by day 45: 6 waits for the plan, 10 (open), 20, 29 (open), 29 (open), 30 (not eligible), 40", () => {
    // day 20: 1 of 5 plans: 1/5, 4/5 wait; day 30: 1 of 2 not eligible: 2/5; day 40: the last: 1/5 + 2/5 = 3/5 over 1 - 2/5
    expect(rows.get("plan")?.shareBy45).toBeCloseTo(1, 12);
    expect(rows.get("plan")?.medianDays).toBe(40);
  });

  test("received 46 days or more before 30 June: 3, of which 1 is not eligible", () => {
    expect(rows.get("evaluated")).toMatchObject({ within45: 3, of45: 3 });
    expect(rows.get("plan")).toMatchObject({ within45: 2, of45: 2 });
  });

  test("dropping the open ones would say 20 days; a third open one leaves no median", () => {
    const open = (n: number) => Array.from({ length: n }, () => ({ referred: "2024-06-01" }));
    const plan = { referred: "2024-01-01", plan: "2024-01-21" };
    expect(tableOf([plan, ...open(1)]).get("plan")?.medianDays).toBe(20);
    expect(tableOf([plan, ...open(2)]).get("plan")?.medianDays).toBeNull();
  });

  test("no referral: no share, no median", () => {
    expect(tableOf([]).get("plan")).toMatchObject({
      count: 0,
      of: 0,
      share: null,
      medianDays: null,
      of45: 0,
      shareBy45: null,
    });
  });
});

const day = fc.nat(150).map((days) => addDays("2024-01-01", days));
const row = fc.record({
  referred: day,
  received: fc.option(day, { nil: undefined }),
  evaluated: fc.option(day, { nil: undefined }),
  eligible: fc.constantFrom("yes", "no", undefined),
  plan: fc.option(day, { nil: undefined }),
  late: fc.constantFrom("family", "program", undefined),
  closed: fc.option(day, { nil: undefined }),
});

test("what is known later never changes an earlier report: cells dated after the as-of date, and answers, as if blank", () => {
  const ASKED = "2024-03-31";
  const known = (date: string | undefined) => (date !== undefined && date <= ASKED ? date : undefined);
  const asOfThen = (each: Row): Row =>
    Object.fromEntries(
      Object.entries({
        ...each,
        received: known(each.received),
        evaluated: known(each.evaluated),
        eligible: known(each.evaluated) === undefined ? undefined : each.eligible,
        plan: known(each.plan),
        closed: known(each.closed),
      }).filter(([, value]) => value !== undefined),
    ) as unknown as Row;
  fc.assert(
    fc.property(fc.array(row, { minLength: 1, maxLength: 8 }), (rows) => {
      // a date before the referral is a fault of its own, whenever it is typed
      fc.pre((rows as Row[]).every(({ referred, evaluated }) => evaluated === undefined || evaluated >= referred));
      expect([...tableOf(rows as Row[], ASKED)]).toEqual([...tableOf((rows as Row[]).map(asOfThen), ASKED)]);
    }),
    { numRuns: 60 },
  );
});

test("of the judged, those in time and the four rows of the others add up", () => {
  fc.assert(
    fc.property(fc.array(row, { maxLength: 10 }), (rows) => {
      const table = tableOf(rows as Row[]);
      const plan = table.get("plan");
      const late = ["late, family reason", "late, program reason", "late, no reason named", "closed before day 45"];
      const parts = late.map((step) => Number(table.get(step)?.count));
      expect(parts.reduce((sum, count) => sum + count, Number(plan?.within45))).toBe(plan?.of45);
    }),
    { numRuns: 60 },
  );
});

test("seven days later in every date changes nothing", () => {
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
