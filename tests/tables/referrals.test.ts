import fc from "fast-check";
import { referrals as referralsTable } from "../../src/tables/referrals";
import { addDays, addMonths } from "../oracle/calendar";
import { child, program, skill } from "../oracle/programs";
import { oracleReferrals, type ReferralRow } from "../oracle/referrals";
import {
  contextFrom,
  entriesOf,
  type ReferralProgram,
  referralPrograms,
  referralSheet,
  rowsOf,
  workbookWith,
} from "./referrals-book";

function tableOf({ input, referrals }: ReferralProgram) {
  return referralsTable(contextFrom(workbookWith(input, { Referrals: referralSheet(referrals) }), entriesOf(input)));
}

function keyed(rows: readonly Record<string, unknown>[]): Map<string, Record<string, unknown>> {
  const map = new Map(rows.map((row) => [`${String(row.dimension)}: ${String(row.value)}`, row]));
  expect(map.size).toBe(rows.length);
  return map;
}

const COUNTED = ["children", "childMonths", "referrals", "childrenReferred", "expected"];

describe("random programs", () => {
  test("agree with a count of one day at a time, in every dimension", () => {
    fc.assert(
      fc.property(referralPrograms(), (each) => {
        const ours = keyed(rowsOf(tableOf(each)));
        const theirs = keyed(oracleReferrals(each.input, each.referrals));
        expect([...ours.keys()].sort()).toEqual([...theirs.keys()].sort());
        for (const [key, row] of theirs) {
          for (const name of COUNTED) {
            const value = row[name];
            const near = typeof value === "number" ? expect.closeTo(value, 8) : value;
            expect([key, name, ours.get(key)?.[name]]).toEqual([key, name, near]);
          }
        }
      }),
      { numRuns: 60 },
    );
  });

  test("child-months and referrals are the same sum in every dimension that splits them", () => {
    fc.assert(
      fc.property(referralPrograms(), (each) => {
        const rows = rowsOf(tableOf(each));
        const sumOf = (dimension: string, key: string) =>
          rows.filter((row) => row.dimension === dimension).reduce((sum, row) => sum + Number(row[key]), 0);
        const total = sumOf("site", "referrals");
        for (const dimension of ["band", "quarter"]) {
          expect(sumOf(dimension, "childMonths")).toBeCloseTo(sumOf("site", "childMonths"), 8);
          expect(sumOf(dimension, "referrals")).toBe(total);
        }
        expect(sumOf("source", "referrals")).toBe(total);
        expect(sumOf("site and area", "referrals")).toBe(sumOf("area", "referrals"));
        for (const dimension of ["site", "band", "quarter"]) expect(sumOf(dimension, "expected")).toBeCloseTo(total, 8);
        expect(sumOf("site and area", "expected")).toBeCloseTo(sumOf("area", "referrals"), 8);
      }),
      { numRuns: 50 },
    );
  });
});

describe("the numbers of the notes", () => {
  const runs = { numRuns: 40 };
  const tested = (rows: readonly Record<string, unknown>[], dimension: string) =>
    rows.filter((row) => row.dimension === dimension && Number(row.expected ?? 0) > 0);

  test("rows compared and outside their funnels are those of the table", () => {
    fc.assert(
      fc.property(referralPrograms(), (each) => {
        const table = tableOf(each);
        const rows = rowsOf(table);
        for (const dimension of ["site", "area", "band", "quarter", "source", "site and area"]) {
          const own = tested(rows, dimension);
          const outside = (level: string) =>
            own.filter(
              (row) =>
                Number(row.ratio) < Number(row[`funnel${level}Lower`]) - 1e-9 ||
                Number(row.ratio) > Number(row[`funnel${level}Upper`]) + 1e-9,
            ).length;
          const luck = (level: string, inside: number) =>
            own.reduce((sum, row) => sum + outsideByLuck(Number(row.expected), inside), 0).toFixed(2) + level;
          const found = table.notes.filter((note) => note.startsWith(`By ${dimension}: `));
          expect(found).toEqual(
            own.length === 0
              ? []
              : [
                  `By ${dimension}: of ${own.length} rows, ${outside("95")} outside the 95% funnel, where luck alone would put ${luck("", 0.95)}; ${outside("998")} outside the 99.8% funnel, where luck alone would put ${luck("", 0.998)}.`,
                ],
          );
        }
      }),
      runs,
    );
  });

  test("the smallest ratio that would show: reached in four of five periods, and not with one that is smaller", () => {
    fc.assert(
      fc.property(referralPrograms(), (each) => {
        const table = tableOf(each);
        const sites = tested(rowsOf(table), "site");
        const [note = ""] = table.notes.filter((text) => text.startsWith("The smallest ratio"));
        expect([...note.matchAll(/ \(([\d.]+) expected\)/g)].map(([, expected]) => expected)).toEqual(
          sites.map(({ expected }) => Number(expected).toFixed(1)),
        );
        const ratios = [...note.matchAll(/ ([\d.]+) \(/g)].map(([, ratio]) => Number(ratio));
        sites.forEach(({ expected }, at) => {
          const [mean, ratio] = [Number(expected), ratios[at]!];
          const critical = firstCount((count) => 1 - atMost(count - 1, mean) <= 0.025);
          const power = (times: number) => 1 - atMost(critical - 1, times * mean);
          expect(power(ratio + 0.006)).toBeGreaterThan(0.8);
          expect(power(ratio - 0.006)).toBeLessThan(0.8);
        });
      }),
      runs,
    );
  });
});

/** P(X <= count) of a Poisson count, added up term by term. */
function atMost(count: number, mean: number): number {
  let [term, sum] = [Math.exp(-mean), 0];
  for (let k = 0; k <= count; k += 1) {
    sum += term;
    term *= mean / (k + 1);
  }
  return sum;
}

/** Beyond the smallest counts with P(X <= k) of a tail or more. Spiegelhalter (2005), Stat Med 24:1185-1202. */
function outsideByLuck(mean: number, inside: number): number {
  const limit = (share: number) => firstCount((count) => atMost(count, mean) >= share);
  const [lowest, highest] = [limit((1 - inside) / 2), limit((1 + inside) / 2)];
  return atMost(lowest - 1, mean) + 1 - atMost(highest, mean);
}

function firstCount(reached: (count: number) => boolean): number {
  let count = 0;
  while (!reached(count)) count += 1;
  return count;
}

describe("property", () => {
  const runs = { numRuns: 30 };

  test("a child who came and left before the period changes nothing", () => {
    fc.assert(
      fc.property(referralPrograms(), (each) => {
        const from = each.input.settings.from as string;
        const birth = addMonths(from, -20);
        const gone = child("gone", birth, { enrolled: birth, left: addDays(from, -3) });
        const more = { ...each, input: { ...each.input, children: [...each.input.children, gone] } };
        const also = [...each.referrals, { child: "gone", referred: addDays(from, -9), areas: ["speech"], from: null }];
        expect(tableOf({ ...more, referrals: also }).rows).toEqual(tableOf(each).rows);
      }),
      runs,
    );
  });

  /** Ages are read in calendar months, so that bands and what is expected by them may move by a day or two. */
  test("seven days later in every date: the same time and referrals at every site, area and source", () => {
    fc.assert(
      fc.property(referralPrograms(), (each) => {
        const counts = (program: typeof each) =>
          rowsOf(tableOf(program))
            .filter(({ dimension }) => ["site", "area", "source", "site and area"].includes(String(dimension)))
            .map(({ value, children, childMonths, referrals, childrenReferred }) => {
              return [value, children, childMonths, referrals, childrenReferred];
            });
        expect(counts(sevenDaysLater(each))).toEqual(counts(each));
      }),
      runs,
    );
  });

  test("other names of the sites change nothing but the names and their order", () => {
    fc.assert(
      fc.property(referralPrograms(), (each) => {
        const renamed = each.input.children.map((row) => ({ ...row, site: `zone ${row.site}` }));
        const rows = rowsOf(tableOf({ ...each, input: { ...each.input, children: renamed } }));
        const back = rows.map((row) => ({ ...row, value: String(row.value).replace(/^zone /, "") }));
        const before = keyed(rowsOf(tableOf(each)));
        const after = keyed(back);
        expect([...after.keys()].sort()).toEqual([...before.keys()].sort());
        for (const [key, row] of before) expect(after.get(key)).toEqual(row);
      }),
      runs,
    );
  });
});

/** Born January 1, 2026 at term, 90 days in the first quarter: bands turn on 1 April (3 months) and 1 July (6 months). */
function sevenDaysLater<T>(value: T): T {
  const text = JSON.stringify(value, (_, each: unknown) =>
    typeof each === "string" && /^\d{4}-\d{2}-\d{2}$/.test(each) ? addDays(each, 7) : each,
  );
  return JSON.parse(text) as T;
}

describe("by hand", () => {
  const north = child("A", "2026-01-01");
  const river = child("B", "2026-01-01", { site: "River", left: "2026-04-11" });
  const settings = { asOf: "2026-06-30", from: "2026-01-01" };
  const made = (id: string, referred: string, areas: string[]): ReferralRow => ({
    child: id,
    referred,
    areas,
    from: "clinic",
  });
  const input = program([north, river], [], {
    settings,
    skills: [skill("sits"), skill("babbles", { area: "speech" })],
  });
  const referrals = [
    made("A", "2026-02-01", ["speech", "gross motor"]),
    made("A", "2026-02-01", ["speech", "gross motor"]),
    made("B", "2026-04-10", ["speech"]),
    made("B", "2026-04-11", ["speech"]),
  ];
  const table = tableOf({ input, referrals });
  const rows = keyed(rowsOf(table));

  test("days: A 90 and 91, B 90 and 10 (1 to 10 April)", () => {
    expect(rows.get("site: North")).toMatchObject({ children: 1, childMonths: 181 / 30.4375, referrals: 1 });
    expect(rows.get("site: River")).toMatchObject({ children: 1, childMonths: 100 / 30.4375, referrals: 1 });
    expect(rows.get("band: 0 to <3 months")).toMatchObject({ childMonths: 180 / 30.4375, referrals: 1 });
    expect(rows.get("quarter: 2026-Q2")).toMatchObject({ childMonths: 101 / 30.4375, referrals: 1 });
  });

  test("expected: 1 referral in 180 days of the first band, 1 in 101 of the second", () => {
    expect(rows.get("site: North")?.expected).toBeCloseTo(90 / 180 + 91 / 101, 12);
    expect(rows.get("site: River")?.expected).toBeCloseTo(90 / 180 + 10 / 101, 12);
    expect(rows.get("site and area: River / gross motor")?.expected).toBeCloseTo(90 / 180, 12);
    expect(rows.get("band: 0 to <3 months")?.expected).toBeCloseTo((2 * 180) / 281, 12);
  });

  test("a referral of two areas counts once in each and once elsewhere; an exact copy counts once", () => {
    expect(rows.get("area: speech")).toMatchObject({ referrals: 2, childrenReferred: 2, expected: null, ratio: null });
    expect(rows.get("area: gross motor")).toMatchObject({ referrals: 1 });
    expect(rows.get("source: clinic")).toMatchObject({
      referrals: 2,
      per100ChildMonths: expect.closeTo((200 * 30.4375) / 281, 12),
    });
  });

  test("the day of leaving is no followed day: the referral on it is counted in a note", () => {
    expect(table.notes.join(" ")).toContain("made while the child was not in the program, and so not counted: 1.");
  });

  test("a row with nothing referred is tested too", () => {
    expect(rows.get("site and area: River / gross motor")).toMatchObject({
      referrals: 0,
      ratio: 0,
      p: expect.closeTo(1, 12),
    });
  });
});

test("without a column headed Site so no rows are by site, and a note says so", () => {
  const input = program([child("A", "2024-01-01")], []);
  const workbook = workbookWith(input, { Referrals: referralSheet([]) });
  const [children, ...others] = workbook.sheets;
  const grid = children!.grid;
  const columns = { ...workbook, sheets: [{ ...children!, grid }, ...others] };
  const context = contextFrom(columns, entriesOf(input));
  const enrolments = { ...context.cohort.enrolments, columns: [] };
  const table = referralsTable({ ...context, cohort: { ...context.cohort, enrolments } });
  expect(rowsOf(table).some(({ dimension }) => String(dimension).startsWith("site"))).toBe(false);
  expect(table.notes.join(" ")).toContain("no column headed Site");
});
