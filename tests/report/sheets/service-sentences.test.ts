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
  test("rate, who stands apart with its numbers, luck, and what could have been seen", () => {
    expect(said(referralsTable())).toEqual([
      "9 referrals in 300.0 child-months, 3.0 per 100; after Holm's adjustment 1 of 2 sites stands apart from the program's own rates by age",
      expect.stringMatching(
        /^North: 8 referrals where 4\.0 were expected, ratio 2\.00 \(limits 0\.86 to 3\.94\), p 0\.030\. .* a question to ask, not an answer\.$/,
      ),
      "Outside the 95% funnel: 0 of 2 sites, where luck alone would put 0.08.",
      expect.stringMatching(/at 2\.8 times its expected number .* A smaller excess can be there and not be seen\.$/),
    ]);
  });

  test("nobody apart", () => {
    const [title, next] = said(referralsTable(0.2));
    expect(title).toMatch(/adjustment none of 2 sites stand apart/);
    expect(next).toMatch(/^Outside the 95% funnel/);
  });

  test("nothing expected of anyone: the rate alone; nobody followed: no rate", () => {
    const table = referralsTable();
    const quarter = table.rows.filter(([dimension]) => dimension === "quarter");
    expect(said({ ...table, rows: quarter })).toEqual(["9 referrals in 300.0 child-months, 3.0 per 100"]);
    const idle = table.rows.filter(([dimension]) => dimension === "area");
    expect(said({ ...table, rows: idle })).toEqual(["Nobody was followed in the period, so that no referral counts"]);
  });
});

describe("scan", () => {
  test("the most likely cluster, with what was expected and one p for all windows", () => {
    const [title, more] = said(scanTable());
    expect(title).toBe(
      "The most likely cluster of referrals is River, speech, December 2025 to January 2026, with 7 referrals where 1.3 were expected (p 0.004 for all windows together)",
    );
    expect(more).toMatch(/^1 of the 2 windows listed has a p of 0\.05 or less\. .*question to ask/);
  });

  test("no more than chance gives", () => {
    expect(said(scanTable(0.3))).toEqual([
      "No cluster of referrals beyond what chance gives; the nearest to one is River, speech, December 2025 to January 2026, with 7 referrals where 1.3 were expected (p 0.300 for all windows together)",
    ]);
    expect(said({ ...scanTable(), rows: [] })).toEqual([
      "In no place and months did more referrals come than expected",
    ]);
  });
});

describe("steps", () => {
  test("plans in time of those judged, family reasons apart, each step with its own denominator", () => {
    expect(said(stepsTable())).toEqual([
      "Of the referrals received long enough ago to judge, 5 of 9 had a plan within 45 days of receipt",
      "Of the others, 1 is late for a reason of the family, which is the exception of the rule.",
      "Of 20 referrals, 90.0% (18 of 20) were received; of those, 12 of 18 are evaluated; of those with an answer, 8 of 10 were found eligible; of those, 6 of 8 have a plan. The latest referrals still have steps to come.",
      "Median from receipt, those still waiting counted as waiting: 20 days to the evaluation.",
    ]);
  });

  test("nothing to judge yet, and no referral", () => {
    expect(said(stepsTable(0))[0]).toBe("No referral of the period was received long enough ago to judge its 45 days");
    const table = stepsTable();
    const rows = table.rows.map(([step]) => [step ?? null, 0, 0, ...Array.from({ length: 6 }, () => null)]);
    expect(said({ ...table, rows })).toEqual([
      "No referral was made in the period on a day on which the child was followed",
    ]);
  });
});

describe("ratings", () => {
  /** (c + d) / (a + b + c + d) = 5/8, (d + e) / all = 4/10, rated 10 of 16. */
  test("both statements and the coverage, with their numbers", () => {
    expect(said(ratingsTable())).toEqual([
      "Of children who entered below the level of their peers, these grew faster by exit: Getting things done 5 of 8",
      "Left at the level of their peers: Getting things done 4 of 10.",
      "Rated, of those who left after six months of service or more: Getting things done 10 of 16. A few children move these percents a great deal.",
    ]);
  });

  test("nobody rated, and no outcome at all", () => {
    const table = ratingsTable();
    const rows = [1, 2].map((statement) => ["Getting things done", 0, 0, 0, 0, 0, statement, 0, 0, null, 0]);
    expect(said({ ...table, rows })).toEqual([
      "No child who left after six months of service or more has both ratings",
    ]);
    expect(said({ ...table, rows: [] })).toEqual(["No outcome was rated"]);
  });
});

describe("trend", () => {
  test("first and last quarter with their numbers, the last one provisional, a reversal told", () => {
    expect(said(trendTable())).toEqual([
      "Of the child-skills with a current look, 6 of 12 were met at the end of 2026-Q1 and 12 of 16 on September 30, 2026 (provisional)",
      "2026-Q3 is provisional: looks are still to be entered.",
      "The share moves with the ages of the children who are followed: a change is no progress or loss by itself. For 1 skill the direction turns around when sites are read apart: see the warnings below the rows.",
    ]);
    expect(said(trendTable(false))[0]).toMatch(/September 30, 2026$/);
  });

  test("nobody has a current look", () => {
    const table = trendTable();
    const rows = table.rows.map((row) => row.map((value, at) => (at === 4 || at === 5 ? 0 : value)));
    expect(said({ ...table, rows })).toEqual(["No child followed at the end of these quarters has a current look"]);
  });
});

test("a percent never stands without its numbers, in any sentence", () => {
  for (const table of [referralsTable(), scanTable(), stepsTable(), ratingsTable(), trendTable()]) {
    const percents = said(table)
      .join(" ")
      .match(/\d%(?! funnel)(?! \([\d,]+ of [\d,]+\))/g);
    expect(percents).toBeNull();
  }
});

test("months and p in words", () => {
  expect(monthsInWords("2026-01", "2026-03")).toBe("January to March 2026");
  expect(monthsInWords("2025-12", "2025-12")).toBe("December 2025");
  expect([0.0004, 0.001, 0.5].map(pInWords)).toEqual(["p below 0.001", "p 0.001", "p 0.500"]);
});
