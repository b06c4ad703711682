import { compareWithEarlier, comparisonLines } from "../../src/release/words/compare-earlier";
import { parseEarlier } from "../../src/release/words/earlier-report";
import { footnoteOf, methodNoteOf } from "../../src/release/words/footnotes";
import { publishedAge } from "../../src/release/words/published-ages";
import { DECISION, ruleInWords, symbolInWords } from "../../src/release/words/rule-words";
import { leadingSentence, sentencesOf } from "../../src/release/words/sentences";
import type { ReleasedTable } from "../../src/release/release-table";
import type { ReleasableId } from "../../src/tables/table";
import { BANDS, CONTEXT, SKILLS, STEPS, TRUE_BANDS } from "./support/prepared";

const texts = (table: ReleasedTable) => sentencesOf(table, CONTEXT).map(({ text }) => text);

test("a sentence carries n, N, percent, limits, place and day; a row with a hidden figure has none", () => {
  expect(texts(BANDS)).toEqual([
    'Site North: on September 30, 2026, 53 of 85 children checked at 12 to <18 months had met "Walks several steps alone" (62.4%; 95% confidence interval 51.7% to 71.9%).',
    "Site North: on September 30, 2026, 120 of 160 up-to-date skill checks in gross motor at 12 to <18 months were met (75.0%).",
  ]);
  expect(leadingSentence(BANDS, CONTEXT)).toMatch(/120 of 160/);
});

test("no percent without both its numbers, and a range with both its ends", () => {
  expect(texts(STEPS)).toEqual([
    "Referred: 64 of 64 referrals made between July 1, 2026 and September 30, 2026 (100.0%; 95% confidence interval 94.3% to 100.0%).",
    "Evaluated: 48 of 64 referrals made between July 1, 2026 and September 30, 2026 (75.0%; 95% confidence interval 63.2% to 84.0%). Half took this step within 21 days of receipt.",
  ]);
  const ranges = { ...STEPS, rows: [["plan", 30, { from: 11, to: 19 }, null, null, null, null, null, null]] };
  expect(texts(ranges)).toEqual(["Plan: 11 to 19 of 30 referrals made between July 1, 2026 and September 30, 2026."]);
});

test("a rounded count says that it is one", () => {
  const rounded = { ...CONTEXT, rule: { minimumCell: 11, method: "round", base: 15 } } as const;
  expect(sentencesOf(STEPS, rounded)[0]?.text).toMatch(/64 of 64 .* \(counts rounded to multiples of 15\)\.$/);
});

test("the other tables", () => {
  const column = (key: string, unit: "text" | "count" = "count") => ({ key, label: key, unit });
  const table = (id: ReleasableId, keys: readonly string[], row: ReleasedTable["rows"][number]): ReleasedTable => ({
    ...STEPS,
    id,
    columns: keys.map((key) => column(key, key === "skill" ? "text" : "count")),
    rows: [row],
  });
  expect(
    texts(
      table(
        "reached-by-age",
        ["skill", "age", "children", "met", "notKnown", "lowest"],
        ["walk-alone", 12, 90, 45, 15, 0.5],
      ),
    ),
  ).toEqual([
    'At least 45 of 90 children ever in the program had met "Walks several steps alone" by 12 months of age (50.0%). For 15 others it is not known.',
  ]);
  expect(
    texts(table("age-when-met", ["skill", "children", "p25", "p50", "p90"], ["walk-alone", 205, 11, 12, "*"])),
  ).toEqual([
    'Of 205 children checked for "Walks several steps alone", by estimate a quarter had met it by 11 months of age, half by 12.',
  ]);
  expect(
    texts(
      table(
        "referrals",
        ["dimension", "value", "referrals", "childMonths", "per100ChildMonths", "expected", "ratio", "lower", "upper"],
        ["site", "North", 23, 1204.5, 1.909, 25.3, 0.909, 0.58, 1.36],
      ),
    ),
  ).toEqual([
    "Site North: 23 referrals between July 1, 2026 and September 30, 2026, in 1204.5 child-months (1.91 per 100 child-months). At the program's own rates by age, 25.3 were expected, a ratio of 0.91 (95% confidence interval 0.58 to 1.36).",
  ]);
  expect(
    texts(table("ratings", ["outcome", "statement", "count", "of", "percent"], ["knowledge", 2, 30, 45, 66.666])),
  ).toEqual(["Knowledge: 30 of 45 children were at the level of their age at exit (66.7%); summary statement 2."]);
  expect(
    texts(
      table(
        "trend",
        ["quarter", "skill", "met", "assessed", "shareMet", "provisional"],
        ["2026-Q3", "first-words", 20, 40, 0.5, true],
      ),
    ),
  ).toEqual([
    'At the end of 2026-Q3, 20 of 40 children checked had met "Says three words" (50.0%). This quarter is provisional: entries are still to come.',
  ]);
  const left = { ...BANDS, id: "met-by-band-left" } as const;
  expect(texts(left)[0]).toMatch(
    /^Site North: of children who left the program between July 1, 2026 and September 30, 2026, on their last day, 53 of 85/,
  );
});

test("the footnote names population, period, source, exclusions, missing and rule", () => {
  const note = footnoteOf(BANDS, CONTEXT);
  for (const part of [
    "Who is counted: children in the program",
    "September 30, 2026",
    "Source:",
    "Left out:",
    "Missing:",
    "at least 11",
  ])
    expect(note).toContain(part);
  expect(footnoteOf(STEPS, CONTEXT)).toContain("Period: July 1, 2026 to September 30, 2026");
  expect(methodNoteOf(BANDS)).toMatch(/met divided by checked; confidence intervals are Wilson's/);
});

test("the rule and the symbol in words: prepared under, never de-identified", () => {
  expect(ruleInWords(CONTEXT.rule)).toMatch(/^Prepared under the rule of at least 11: no count of 1 to 10 is shown/);
  expect(ruleInWords({ minimumCell: 5, method: "round", base: 5 })).toMatch(/rounded to multiples of 5/);
  expect(ruleInWords({ minimumCell: 11, method: "round", base: 15, mostOff: 14 })).toMatch(/may be off by up to 14/);
  expect(symbolInWords(CONTEXT.rule)).toMatch(/^"\*" means held back/);
  expect(DECISION).toMatch(/45 CFR 164\.514 and 34 CFR 99\.31\(b\)/);
  expect(DECISION).toMatch(/does not say that they are de-identified/);
});

/** Labels: WHO MGRS, Acta Paediatr 2006;Suppl 450:86-95; Zubler et al., Pediatrics 2022;149(3):e2021052138. */
test("a published age stands only with the label of what it is", () => {
  expect(publishedAge(SKILLS[0]!)).toMatch(
    /8\.2 to 17\.6 months, from the 1st to the 99th percentile of its source\. Source: WHO/,
  );
  expect(publishedAge(SKILLS[1]!)).toMatch(/by 15 months, the age by which 75% or more of children.*Source: CDC\/AAP/);
  expect(publishedAge(SKILLS[2]!)).toBeNull();
});

describe("an earlier report", () => {
  const settings = {
    asOf: "2026-09-30",
    from: "2026-07-01",
    recheck: 90,
    edges: [0, 12, 18],
    by: ["Site"],
    enteredBy: null,
  };
  const before = { ...settings, asOf: "2026-06-30", from: "2026-04-01" };
  const rows = [
    ["North", "walk-alone", "gross motor", "12 to <18 months", 88, 80, 47, 47 / 80, 0.4778, 0.6887],
    ["North", "all", "gross motor", "12 to <18 months", 176, 150, 145, 145 / 150, null, null],
  ];
  const json = (given: object, table: object = {}) =>
    JSON.stringify({
      tool: { name: "Windowline", version: "0.1.0" },
      settings: { ...before, ...given },
      tables: [{ ...TRUE_BANDS, rows, ...table }],
    });
  const compared = (text: string) => {
    const read = parseEarlier(text);
    if ("message" in read) throw new Error(read.message);
    return compareWithEarlier([BANDS], CONTEXT, settings, read.earlier)[0]!;
  };

  test("the same figure stands beside ours; one whose remainder is small is not repeated", () => {
    const found = compared(json({}));
    expect(found).toMatchObject({ reason: null, without: 1 });
    expect(comparisonLines(found)).toEqual([
      'Site North: on September 30, 2026, 53 of 85 children checked at 12 to <18 months had met "Walks several steps alone" (62.4%; 95% confidence interval 51.7% to 71.9%). Earlier report, as of June 30, 2026: Site North: on June 30, 2026, 47 of 80 children checked at 12 to <18 months had met "Walks several steps alone" (58.8%; 95% confidence interval 47.8% to 68.9%).',
      "met-by-band: 1 row has no earlier figure to compare with.",
    ]);
    expect(JSON.stringify(found)).not.toContain("145");
  });

  test.each([
    [{ recheck: 60 }, {}, "recheck was 60 and is 90"],
    [{ by: [] }, {}, "by was not set and is Site"],
    [{ from: "2026-01-01" }, {}, "its period is of another length"],
    [{ asOf: "2026-09-30" }, {}, "it is of the same day"],
    [{ enteredBy: "2026-07-05" }, {}, "only one of the two leaves out rows by the day they were typed in"],
    [{}, { population: "Others" }, "it counted other children"],
    [{}, { id: "trend" }, "the earlier report does not have it"],
  ])("%j %j: %s", (given, table, reason) => {
    expect(compared(json(given, table)).reason).toBe(reason);
    expect(comparisonLines(compared(json(given, table)))).toEqual([`met-by-band: not compared, because ${reason}.`]);
  });

  test.each([
    ["no JSON"],
    ["{}"],
    ['{"tool": {"name": "Other", "version": "1"}, "settings": {}, "tables": []}'],
    ["null"],
  ])("%s is no report of ours", (text) =>
    expect(parseEarlier(text)).toEqual({ message: expect.stringMatching(/--json.*nothing was written\.$/) }),
  );
});
