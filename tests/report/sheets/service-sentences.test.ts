import { sentencesOf } from "../../../src/report/sheets/sentences/sentences";
import { monthsInWords } from "../../../src/words/dates";
import { pInWords } from "../../../src/words/numbers";
import type { Table } from "../../../src/tables/table";
import { ratingsTable, referralsTable, scanTable, serviceReport, stepsTable, trendTable } from "./service-tables";

const said = (table: Table) => sentencesOf(table, serviceReport([table]));

describe("referrals", () => {
  /**
   * By hand, Poisson with mean 4: P(0) = 0.0183, P(X >= 9) = 0.0214, so 0.04 a site outside 1 to 8. Power 80% of reaching 9:
   * mean 11.38 (half the 80% quantile of chi-squared with 18 degrees of freedom, 22.76, from tables), 2.8 times 4.
   */
  test("who had more than expected, rate, luck, and what could have been noticed", () => {
    expect(said(referralsTable())).toEqual([
      "North had 8 referrals, where 4.0 were expected for its children's ages",
      "9 referrals in 300 child-months, 3.0 per 100.",
      expect.stringMatching(
        /^North had 2\.00 times its expected number \(likely range 0\.86 to 3\.94; p 0\.030, .* Ask first\.$/,
      ),
      "Outside the 95% funnel lines: 0 of 2 sites (luck alone would put 0.08 there).",
      "With so few, only a site at 2.8 times its expected number would have been noticed.",
    ]);
  });

  test("nobody apart", () => {
    const [title, rate] = said(referralsTable(0.2));
    expect(title).toBe("No site had more or fewer referrals than its children's ages explain");
    expect(rate).toMatch(/^9 referrals/);
  });

  test("nothing expected of anyone: the rate alone; nobody in the program: no rate", () => {
    const table = referralsTable();
    const quarter = table.rows.filter(([dimension]) => dimension === "quarter");
    expect(said({ ...table, rows: quarter })).toEqual(["9 referrals in 300 child-months, 3.0 per 100"]);
    const idle = table.rows.filter(([dimension]) => dimension === "area");
    expect(said({ ...table, rows: idle })).toEqual([
      "No child was in the program in the period, so no referral counts",
    ]);
  });
});

describe("scan", () => {
  test("the cluster, with what was expected and one p-value for all places and months", () => {
    expect(said(scanTable())).toEqual([
      "River had 7 speech referrals in December 2025 to January 2026, where 1.3 were expected",
      "p-value 0.004 for all places and months together; 1 row of the table has one of 0.05 or less.",
      expect.stringMatching(/Ask first\.$/),
    ]);
  });

  test("no more than chance gives", () => {
    expect(said(scanTable(0.3))).toEqual([
      "No place and months had more referrals than chance gives",
      "The nearest: River had 7 speech referrals in December 2025 to January 2026, where 1.3 were expected (p 0.300 for all places and months together).",
    ]);
    expect(said({ ...scanTable(), rows: [] })).toEqual(["No place and months had more referrals than expected"]);
  });
});

describe("steps", () => {
  test("plans in time of those due, family reasons apart, each step with its own denominator", () => {
    expect(said(stepsTable())).toEqual([
      "Of 9 plans due, 5 were in place within 45 days",
      "Of the others, 1 is late for a reason of the family, which is the exception of the rule.",
      "Received: 18 of 20 (90%) referred. Evaluated: 12 of 18 received. Found eligible: 8 of 10 evaluated with an answer. Plan in place: 6 of 8 eligible. Later steps of the newest referrals are still to come.",
      "Half took no longer than 20 days to the evaluation, open referrals included.",
    ]);
  });

  test("nothing to judge yet, and no referral", () => {
    expect(said(stepsTable(0))[0]).toBe(
      "20 referrals were made; it is too early to say whether a plan came within 45 days",
    );
    const table = stepsTable();
    const rows = table.rows.map(([step]) => [step ?? null, 0, 0, ...Array.from({ length: 6 }, () => null)]);
    expect(said({ ...table, rows })).toEqual([
      "No referral was made in the period for a child who was in the program that day",
    ]);
  });
});

describe("ratings", () => {
  /** (c + d) / (a + b + c + d) = 5/8, (d + e) / all = 4/10, rated 10 of 16. */
  test("both statements and who was rated, with their counts", () => {
    expect(said(ratingsTable())).toEqual([
      "At exit, 4 of 10 children were at the level of children their age",
      "Of those who entered below that level, these grew faster by exit: 5 of 8 in “getting things done”.",
      "One child more or less moves such small numbers a great deal.",
      "Rated, of the children who left after six months of service or more: Getting things done 10 of 16.",
    ]);
  });

  test("nobody rated, and no outcome at all", () => {
    const table = ratingsTable();
    const rows = [1, 2].map((statement) => ["Getting things done", 0, 0, 0, 0, 0, statement, 0, 0, null, 0]);
    expect(said({ ...table, rows })).toEqual([
      "No child who left after six months of service or more has both an entry and an exit rating",
    ]);
    expect(said({ ...table, rows: [] })).toEqual(["No outcome was rated"]);
  });
});

describe("trend", () => {
  test("first and last quarter with their counts, the last one provisional, a reversal told", () => {
    expect(said(trendTable())).toEqual([
      "Of up-to-date skill checks, 6 of 12 were met at the end of March 2026, and 12 of 16 on September 30, 2026 (provisional)",
      "A share moves with the ages of the children in the program: a change is not by itself progress or loss. For 1 area the direction changes when sites are read apart: the notes say which.",
    ]);
    expect(said(trendTable(false))[0]).toMatch(/September 30, 2026$/);
  });

  /** 1 check beside 16 is under a quarter of them. */
  test("a first quarter of one check is not compared with the last", () => {
    const table = trendTable();
    const rows = table.rows.map((row) =>
      row[0] === "2026-Q1" ? row.map((value, at) => (at === 4 ? 0 : at === 5 ? 1 : value)) : row,
    );
    const few = { ...table, rows: rows.filter((row, at) => row[0] !== "2026-Q1" || at === 0) };
    expect(said(few)[0]).toMatch(/^Of up-to-date skill checks, 9 of 12 were met at the end of June 2026, and 12 of 16/);
    const alone = { ...table, rows: few.rows.filter(([quarter]) => quarter !== "2026-Q2") };
    expect(said(alone)[0]).toBe("Of up-to-date skill checks, 12 of 16 were met on September 30, 2026 (provisional)");
  });

  test("nobody has an up-to-date check", () => {
    const table = trendTable();
    const rows = table.rows.map((row) => row.map((value, at) => (at === 4 || at === 5 ? 0 : value)));
    expect(said({ ...table, rows })).toEqual([
      "No child in the program at the end of these quarters has an up-to-date check",
    ]);
  });
});

test("a percent never stands without its counts, in any sentence", () => {
  for (const table of [referralsTable(), scanTable(), stepsTable(), ratingsTable(), trendTable()]) {
    const text = said(table).join(" ");
    for (const found of text.matchAll(/\d%(?! funnel)/g)) {
      expect(text.slice(Math.max(0, found.index - 24), found.index + 2)).toMatch(/\d of \d+ \(\d+%$/);
    }
  }
});

test("months and p in words", () => {
  expect(monthsInWords("2026-01", "2026-03")).toBe("January to March 2026");
  expect(monthsInWords("2025-12", "2025-12")).toBe("December 2025");
  expect([0.0004, 0.001, 0.5].map(pInWords)).toEqual(["p below 0.001", "p 0.001", "p 0.500"]);
});
