import { binomialAtMost } from "../../src/statistics/distributions";
import { EVERY_AREA, referralScan } from "../../src/tables/referral-scan";
import { mostLikelyMonths } from "../../src/tables/referral-scan-months";
import { apart } from "../../src/tables/referral-scan-windows";
import { referrals as referralsTable } from "../../src/tables/referrals";
import { child, program } from "../oracle/programs";
import { nullProgram } from "../simulation/null-program";
import { sampleContext } from "../simulation/sample-context";
import { contextFrom, entriesOf, referralSheet, rowsOf, workbookWith } from "./referrals-book";

test("the months of the most likely window add up to what the scan says of it", () => {
  const context = nullProgram(1, { children: 60, sites: 3, scanMonths: 12 });
  const table = referralScan(context);
  const months = mostLikelyMonths(context, table);
  const [first] = rowsOf(table);
  const within = months.filter(({ month }) => month >= String(first?.firstMonth) && month <= String(first?.lastMonth));
  expect(within.reduce((sum, { observed }) => sum + observed, 0)).toBe(first?.observed);
  expect(within.reduce((sum, { expected }) => sum + expected, 0)).toBeCloseTo(Number(first?.expected), 9);
  expect(mostLikelyMonths(context, { ...table, rows: [] })).toEqual([]);
});

describe("chance", () => {
  /** P(count <= most) is at least 0.999 for a binomial count with 5%; tests/simulation shows 2,000 full-size programs. */
  test("no more than 5% of programs without a cluster are called clustered, as far as chance allows", () => {
    const programs = 60;
    const options = { children: 60, sites: 3, scanMonths: 12 };
    let called = 0;
    for (let seed = 1; seed <= programs; seed += 1) {
      const p = rowsOf(referralScan(nullProgram(seed, options)))[0]?.p ?? 1;
      if (Number(p) <= 0.05) called += 1;
    }
    const most = [...Array(programs).keys()].find((count) => binomialAtMost(count, programs, 0.05) >= 0.999)!;
    expect(called).toBeLessThanOrEqual(most);
    expect(called).toBeGreaterThan(0);
  });

  /** Eight times as many referrals in March to May of each year, at every site alike. */
  test("a season is no cluster: p calls it, p with months kept does not", () => {
    const programs = 30;
    const options = { children: 120, sites: 3, scanMonths: 24, season: 8 };
    const found = [...Array(programs).keys()].map((seed) => rowsOf(referralScan(nullProgram(seed + 1, options)))[0]);
    const called = (key: "p" | "pSameMonths") => found.filter((row) => Number(row?.[key] ?? 1) <= 0.05).length;
    const most = [...Array(programs).keys()].find((count) => binomialAtMost(count, programs, 0.05) >= 0.999)!;
    expect(called("pSameMonths")).toBeLessThanOrEqual(most);
    expect(called("p")).toBeGreaterThan(most);
  });

  test("the cluster planted in the sample program is the most likely window, with its months, place and area", () => {
    const { context, cluster } = sampleContext(7);
    const [first, ...others] = rowsOf(referralScan(context));
    expect(first).toMatchObject({
      place: cluster.site,
      area: cluster.area,
      firstMonth: cluster.firstMonth,
      lastMonth: cluster.lastMonth,
      p: 1 / 1000,
    });
    expect(Number(first?.pSameMonths)).toBeLessThanOrEqual(0.05);
    expect(others.every(({ p }) => Number(p) > 0.05)).toBe(true);
  });
});

/** One child a site, both of one age, from January to April 2026; three referrals of one in March. */
describe("by hand", () => {
  const children = [child("A", "2025-01-15"), child("B", "2025-01-15", { site: "River" })];
  const settings = { asOf: "2026-04-30", from: "2026-04-01", edges: [0, 36] };
  const input = program(children, [], { settings });
  const made = (id: string, referred: string, areas: string[]) => ({ child: id, referred, areas, from: null });
  const referrals = [
    made("B", "2026-03-02", ["speech"]),
    made("B", "2026-03-09", ["speech", "gross motor"]),
    made("B", "2026-03-20", ["speech"]),
    made("A", "2026-01-20", ["gross motor"]),
  ];
  const entries = { ...entriesOf(input), scanMonths: 4 };
  const context = contextFrom(workbookWith(input, { Referrals: referralSheet(referrals) }), entries);
  const rows = rowsOf(referralScan(context));

  test("expected: 3 speech referrals over 2 children x 120 days, of which 31 in March at River", () => {
    const expected = (3 * 31) / 240;
    expect(rows[0]).toMatchObject({
      place: "River",
      area: "speech",
      firstMonth: "2026-03",
      lastMonth: "2026-03",
      observed: 3,
    });
    expect(rows[0]?.expected).toBeCloseTo(expected, 12);
    expect(rows[0]?.logLikelihoodRatio).toBeCloseTo(3 * Math.log(3 / expected), 12);
  });

  test("month by month: 30 or 31 of 240 days of three referrals, none of them outside March", () => {
    const months = mostLikelyMonths(context, referralScan(context));
    expect(months.map(({ month, observed }) => [month, observed])).toEqual([
      ["2026-01", 0],
      ["2026-02", 0],
      ["2026-03", 3],
      ["2026-04", 0],
    ]);
    [31, 28, 31, 30].forEach((days, at) => expect(months[at]?.expected).toBeCloseTo((3 * days) / 240, 12));
  });

  test.each([
    ["River", EVERY_AREA, [0, 0, 3, 0]],
    ["North", EVERY_AREA, [1, 0, 0, 0]],
    ["River", "gross motor", [0, 0, 1, 0]],
    ["North", "gross motor", [1, 0, 0, 0]],
    ["North", "speech", [0, 0, 0, 0]],
  ])("month by month, of %s and %s: a referral of two areas is one over all areas", (place, area, counts) => {
    const months = mostLikelyMonths(context, { ...referralScan(context), rows: [[place, area]] });
    expect(months.map(({ observed }) => observed)).toEqual(counts);
    // the whole is shared out by days: both sites have the same
    const total = { [EVERY_AREA]: 4, speech: 3, "gross motor": 2 }[area]!;
    [31, 28, 31, 30].forEach((days, at) => expect(months[at]?.expected).toBeCloseTo((total * days) / 240, 12));
  });

  test("River over all areas, and River gross motor, share a referral with River speech and are not listed", () => {
    expect(rows.map(({ place, area }) => `${String(place)} ${String(area)}`)).toEqual([
      "River speech",
      "North gross motor",
    ]);
  });

  test("3 referrals of one child in a window are said, without the child's name", () => {
    const notes = referralScan(context).notes.filter((note) => note.startsWith("River, speech"));
    expect(notes).toEqual([
      "River, speech, 2026-03 to 2026-03: 3 referrals of 1 child. Several referrals of one child are counted one by one.",
    ]);
  });

  /**
   * Keeping months, the three of March fall on River or North with 1/2 each, the one of January too. As unlikely as seen, or
   * more, is any throw with all three speech referrals at one site: both sites have as many days, so 2 x 1/8 = 1/4. (No
   * other throw comes near: 2 of 3 speech referrals in March is far less unlikely.)
   */
  test("p with months kept: 1/4", () => {
    expect(Math.abs(Number(rows[0]?.pSameMonths) - 1 / 4)).toBeLessThan(4 * Math.sqrt((0.25 * 0.75) / 999));
  });

  test("with one place, keeping months leaves nothing to chance: p is 1", () => {
    const enrolments = { ...context.cohort.enrolments, columns: [] };
    const [first] = rowsOf(referralScan({ ...context, cohort: { ...context.cohort, enrolments } }));
    expect(first?.pSameMonths).toBe(1);
  });

  test("the period does not matter to the scan, its months do", () => {
    const asked = contextFrom(workbookWith(input, { Referrals: referralSheet(referrals) }), {
      ...entries,
      from: "2026-01-01",
    });
    expect(referralScan(asked).rows).toEqual(referralScan(context).rows);
    expect(referralsTable(asked).rows).not.toEqual(referralsTable(context).rows);
  });

  test("other names of the sites change nothing but the names", () => {
    const renamed = program(
      children.map((each) => ({ ...each, site: `a ${each.site}` })),
      [],
      { settings },
    );
    const other = contextFrom(workbookWith(renamed, { Referrals: referralSheet(referrals) }), entries);
    const back = rowsOf(referralScan(other)).map((row) => ({ ...row, place: String(row.place).slice(2) }));
    expect(back).toEqual(rows);
  });

  test("without referrals there is no window", () => {
    const none = contextFrom(workbookWith(input, { Referrals: referralSheet([]) }), entries);
    expect(referralScan(none).rows).toEqual([]);
  });

  test("without a column headed Site the program is one place", () => {
    const enrolments = { ...context.cohort.enrolments, columns: [] };
    const [first] = rowsOf(referralScan({ ...context, cohort: { ...context.cohort, enrolments } }));
    expect(first).toMatchObject({ place: "all", area: "speech", firstMonth: "2026-03", observed: 3 });
  });
});

test("a window is listed unless it holds a referral of one above it", () => {
  const window = (layer: number, place: number, first: number, last: number) => ({ layer, place, first, last });
  const referral = (child: number, place: number, month: number, ...areas: number[]) => ({
    child,
    place,
    month,
    layers: [0, ...areas],
  });
  const referrals = [referral(0, 0, 3, 1), referral(1, 0, 4, 1, 2), referral(2, 0, 5, 1), referral(3, 1, 4, 1)];
  const all = [
    window(1, 0, 2, 4), // holds the first two
    window(0, 0, 4, 5), // holds the second again
    window(2, 0, 2, 4), // and so does the other area that it names
    window(1, 1, 2, 4), // another place
    window(1, 0, 5, 6), // later
  ];
  const kept = (most: number) => apart(all, referrals, most).map((each) => each.window);
  expect(kept(9)).toEqual([all[0], all[3], all[4]]);
  expect(kept(2)).toEqual([all[0], all[3]]);
});
