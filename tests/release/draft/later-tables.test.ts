import fc from "fast-check";
import { draftRelease } from "../../../src/release/draft/draft-release";
import { RELEASABLE_IDS } from "../../../src/tables/catalogue";
import { partsOfKey } from "../../../src/release/draft/keys";
import { ageWhenMet } from "../../../src/tables/age-when-met";
import { AgeEstimates } from "../../../src/tables/estimates";
import { metByBand } from "../../../src/tables/met-by-band";
import { ratings } from "../../../src/tables/ratings";
import { referralSteps } from "../../../src/tables/referral-steps";
import { referrals } from "../../../src/tables/referrals";
import type { DraftEntry } from "../../../src/release/release-table";
import type { Table, TableValue } from "../../../src/tables/table";
import { trend } from "../../../src/tables/trend";
import { cohortArbitrary } from "../../oracle/random-cohort";
import { contextFrom, entriesOf, referralPrograms, referralSheet, workbookWith } from "../../tables/referrals-book";
import { cellWhere, programDraft, sampleDraft, type SampleDraft, trueRows } from "./support";

const sample = sampleDraft(RELEASABLE_IDS, { from: "2025-10-01" });
const bySite = sampleDraft(RELEASABLE_IDS, { from: "2026-07-01", by: "Site" });

const COUNTS = [
  "children",
  "met",
  "assessed",
  "referrals",
  "childrenReferred",
  "a",
  "b",
  "c",
  "d",
  "e",
  "count",
  "of",
  "within45",
  "of45",
];

/** Counts of the table itself, row by row, under the keys that the draft has. */
function countsOf(table: Table): (string | number | boolean | null)[][] {
  return table.rows.map((row) =>
    COUNTS.flatMap((key) => row[table.columns.findIndex((each) => each.key === key)] ?? []),
  );
}

function draftedCounts(draft: SampleDraft, id: string) {
  const table = draft.drafts.find((each) => each.id === id)!;
  return trueRows(table, draft).map((row) => COUNTS.flatMap((key) => row[key] ?? []));
}

describe.each([
  ["everybody", sample],
  ["by site", bySite],
])("the invented program, %s", (_, draft) => {
  test.each([
    ["met-by-band", metByBand],
    ["referrals", referrals],
    ["referral-steps", referralSteps],
    ["ratings", ratings],
    ["trend", trend],
  ] as const)("%s has the counts of the table, row by row", (id, make) => {
    expect(draftedCounts(draft, id)).toEqual(countsOf(make(draft.estimates.context)));
  });

  test("every entry that is a count is a cell that is shown, and every figure hangs on such cells alone", () => {
    const isShown = (cell: number) => draft.system.cells[cell]?.showing === "table";
    for (const { rows, columns } of draft.drafts) {
      const loose = rows.flat().filter((entry) => {
        if (entry.kind === "count") return !isShown(entry.cell);
        if (entry.kind === "figure")
          return !entry.needs.every(isShown) || (entry.needs.length === 0 && entry.value !== null);
        return false;
      });
      expect(loose).toEqual([]);
      const labels = columns.filter((__, at) => rows.every((row) => row[at]?.kind === "label")).map(({ key }) => key);
      const plain = [
        "skill",
        "area",
        "band",
        "age",
        "quarter",
        "dimension",
        "value",
        "step",
        "outcome",
        "statement",
        "provisional",
        "shareBy45", // an estimate: it stays in the program
        "opens",
        "closes",
        "expectedShare",
        "Site",
      ];
      expect(labels.filter((key) => !plain.includes(key))).toEqual([]);
      const estimate = columns.findIndex(({ key }) => key === "shareBy45");
      for (const row of rows)
        expect(row[estimate] ?? null).toEqual(estimate < 0 ? null : { kind: "label", value: null });
    }
  });

  test("no day, no child and no family stands in any text of a draft", () => {
    const { ids } = draft.estimates.context.cohort;
    const codes = [...ids, ...draft.families.filter((code) => code !== "")];
    const texts = [
      ...draft.drafts.flatMap(({ title, population, notes, rows }) => [
        title,
        population,
        ...notes,
        ...rows.flat().flatMap((each) => (each.kind === "label" ? [String(each.value)] : [])),
      ]),
    ].join("\n");
    expect(texts).not.toMatch(/\d{4}-\d{2}-\d{2}/);
    const kept = [...draft.system.cells.flatMap(({ key, place }) => [key, place]), ...draft.flags, texts].join("\n");
    expect(codes.filter((code) => new RegExp(`\\b${code}\\b`).test(kept))).toEqual([]);
  });
});

describe("the same count is one cell", () => {
  test("children of a band, for all skills of an age basis", () => {
    const table = sample.drafts.find(({ id }) => id === "met-by-band")!;
    const at = table.columns.findIndex(({ key }) => key === "children");
    const skills = sample.estimates.context.cohort.skills.filter(({ ageBasis }) => ageBasis === "corrected");
    const cells = table.rows.flatMap((row) => {
      const [skill, , band] = row.map((entry) => (entry.kind === "label" ? entry.value : null));
      const entry = row[at];
      return band === "9 to <12 months" && skills.some(({ id }) => id === skill) && entry?.kind === "count"
        ? [entry.cell]
        : [];
    });
    expect(cells.length).toBe(skills.length);
    expect(new Set(cells).size).toBe(1);
  });

  test("the last quarter of the trend is the sum of the bands, by an equation", () => {
    const subject = "skill hand-to-hand (corrected)";
    const whole = cellWhere(sample, { population: "followed", when: "2026-09-30", subject, ages: "..", column: "met" });
    expect(whole.showing).toBe("table");
    const index = sample.system.cells.indexOf(whole);
    const sum = sample.system.equations.find(
      ({ terms }) =>
        terms.some(({ cell, coefficient }) => cell === index && coefficient === 1) &&
        terms.slice(1).every(({ cell }) => partsOfKey(sample.system.cells[cell]!.key).column === "met"),
    )!;
    const bands = sum.terms.slice(1).map(({ cell }) => partsOfKey(sample.system.cells[cell]!.key).ages);
    expect(bands).toEqual(
      ["0..3", "3..6", "6..9", "9..12", "12..18", "18..24", "24..36", "36.."].filter((each) => bands.includes(each)),
    );
    expect(bands.length).toBeGreaterThan(3);
  });

  test("referrals of the period are those of the first step", () => {
    const all = sample.system.cells.filter(
      ({ key }) =>
        partsOfKey(key).column === "referrals" &&
        partsOfKey(key).when === "2025-10-01..2026-09-30" &&
        partsOfKey(key).group === "" &&
        partsOfKey(key).subject === "" &&
        partsOfKey(key).ages === "..",
    );
    expect(all).toHaveLength(1);
    const steps = sample.drafts.find(({ id }) => id === "referral-steps")!;
    const referred = steps.rows[0]!.filter((entry) => entry.kind === "count").map(
      (entry) => sample.system.cells[entry.cell],
    );
    expect(referred).toEqual([all[0], all[0]]);
  });

  test("a quarter that is the whole period is the period", () => {
    const table = bySite.drafts.find(({ id }) => id === "referrals")!;
    const quarter = table.rows.find((row) => row[0]?.kind === "label" && row[0].value === "quarter")!;
    const cells = quarter.flatMap((entry) => (entry.kind === "count" ? [bySite.system.cells[entry.cell]!.key] : []));
    expect(cells[1]).toBe("referred|2026-07-01..2026-09-30|||..|referrals");
  });
});

/** METHOD.md, section 7: more places would give back on which days single children were in the program. */
test.each([
  ["a year", sample],
  ["a quarter, by site", bySite],
])("figures of referrals of %s leave with few places: none, one, two or three", (_, draft) => {
  const places: Record<string, number> = {
    ...{ childMonths: 0, per100ChildMonths: 1, expected: 1, ratio: 2, lower: 2, upper: 2, p: 3, holm: 3, bh: 3 },
    ...{ funnel95Lower: 2, funnel95Upper: 2, funnel998Lower: 2, funnel998Upper: 2 },
  };
  const { columns, rows } = draft.drafts.find(({ id }) => id === "referrals")!;
  const whole = referrals(draft.estimates.context);
  const figures = new Set<string>();
  rows.forEach((row) =>
    row.forEach((entry, at) => {
      if (entry.kind !== "figure" || typeof entry.value !== "number") return;
      const key = columns[at]!.key;
      figures.add(key);
      expect([key, entry.value]).toEqual([key, Number(entry.value.toFixed(places[key]))]);
    }),
  );
  expect([...figures].sort()).toEqual(Object.keys(places).sort());
  // and no fewer: each is within half of its last place of what the table has
  const column = (key: string) => whole.columns.findIndex((each) => each.key === key);
  const drafted = new Map(rows.map((row) => [`${valueOf(row[0])} ${valueOf(row[1])}`, row]));
  for (const row of whole.rows) {
    for (const [key, digits] of Object.entries(places)) {
      const [theirs, ours] = [row[column(key)], valueOf(drafted.get(`${row[0]} ${row[1]}`)?.[column(key)])];
      if (typeof theirs === "number")
        expect(Math.abs(Number(ours) - theirs)).toBeLessThanOrEqual(0.5001 * 10 ** -digits);
    }
  }
});

function valueOf(entry: DraftEntry | undefined): TableValue {
  return entry === undefined || entry.kind === "count" ? null : entry.value;
}

describe("referrals of a year", () => {
  const table = sample.drafts.find(({ id }) => id === "referrals")!;
  const rows = trueRows(table, sample);
  const total = (dimension: string) =>
    rows.filter((row) => row["dimension"] === dimension).reduce((sum, row) => sum + Number(row["referrals"]), 0);
  const all = cellWhere(sample, {
    population: "referred",
    when: "2025-10-01..2026-09-30",
    group: "",
    subject: "",
    ages: "..",
    column: "referrals",
  });

  test("are those of its quarters, of its sites, of its bands and of its sources", () => {
    for (const dimension of ["quarter", "site", "band", "source"]) expect(total(dimension)).toBe(all.count);
  });

  test("are fewer than those of the areas by the areas named besides the first", () => {
    const again = cellWhere(sample, {
      population: "referred",
      group: "",
      subject: "",
      ages: "..",
      column: "referrals counted again by area",
    });
    expect(again.count).toBe(total("area") - (all.count as number));
    expect(again.count).toBeGreaterThan(0);
    expect(again.showing).toBe("never");
  });

  test("leave without fractions that would give days back", () => {
    for (const row of rows) {
      expect(Number.isInteger(row["childMonths"])).toBe(true);
      expect(Number(row["per100ChildMonths"]) * 10).toBeCloseTo(Math.round(Number(row["per100ChildMonths"]) * 10), 9);
    }
  });
});

test("random programs with referrals: every equation holds, whatever is asked for together", () => {
  fc.assert(
    fc.property(
      referralPrograms(),
      fc.subarray(
        RELEASABLE_IDS.filter((id) => id !== "ratings"),
        { minLength: 1 },
      ),
      ({ input, referrals: made }, tables) => {
        const workbook = workbookWith(input, { Referrals: referralSheet(made) });
        const context = contextFrom(workbook, { ...entriesOf(input), minimumCell: 5 });
        fc.pre(context.records.referrals !== null);
        const families = context.cohort.ids.map((_, at) => (at % 3 === 0 ? "one" : ""));
        const draft = draftRelease(new AgeEstimates(context), tables, families);
        const odd = draft.system.cells.filter(({ count, secret }) =>
          secret === null ? count! > 0 && count! < 5 : count! < secret.low || count! > secret.high,
        );
        expect(odd).toEqual([]);
      },
    ),
    { numRuns: 60 },
  );
});

describe("age when met", () => {
  test("random programs: the counts are the table's own", () => {
    fc.assert(
      fc.property(cohortArbitrary(), (input) => {
        const draft = programDraft(input, ["age-when-met"]);
        const table = ageWhenMet(draft.estimates);
        const keys = ["skill", "children", "hadAtFirstLook", "interval", "notMet", "opens", "closes", "expectedShare"];
        expect(trueRows(draft.drafts[0]!, draft).map((row) => keys.map((key) => row[key]))).toEqual(
          table.rows.map((row) => keys.map((key) => row[table.columns.findIndex((each) => each.key === key)])),
        );
      }),
      { numRuns: 40 },
    );
  });

  test("percentiles are whole months near the table's, only where enough children were still without the skill", () => {
    const draft = sampleDraft(["age-when-met"], { minimumCell: 11 }, 120);
    const { skills } = draft.estimates.context.cohort;
    const rows = trueRows(draft.drafts[0]!, draft);
    let shown = 0;
    for (const row of rows) {
      const { after, by } = draft.estimates.intervalsOf(
        0,
        skills.findIndex(({ id }) => id === row["skill"]),
      );
      for (const key of ["p10", "p25", "p50", "p75", "p90"]) {
        if (row[key] === null) continue;
        shown += 1;
        const months = row[key] as number;
        expect(Number.isInteger(months)).toBe(true);
        const days = (months - 0.5) * 30.4375;
        expect(after.filter((age, at) => age >= days && by[at]! > days).length).toBeGreaterThanOrEqual(11);
      }
    }
    expect(shown).toBeGreaterThan(20);
    expect(rows.filter((row) => row["p90"] === null).length).toBeGreaterThan(0);
  });

  test("nothing else that is estimated leaves", () => {
    const keys = sample.drafts.find(({ id }) => id === "age-when-met")!.columns.map(({ key }) => key);
    expect(keys).toEqual([
      ...["skill", "children", "hadAtFirstLook", "interval", "notMet", "p10", "p25", "p50", "p75", "p90"],
      ...["opens", "closes", "expectedShare"],
    ]);
    const reached = sample.drafts.find(({ id }) => id === "reached-by-age")!.columns.map(({ key }) => key);
    expect(reached).not.toEqual(expect.arrayContaining(["estimate"]));
  });
});

describe("what two tables give away together", () => {
  const { cohort, asOf, from } = sample.estimates.context;
  const children = [...cohort.ids.keys()];
  const followedOn = (child: number, day: number) => cohort.following.enrolmentOn(child, day) >= 0;

  test("children followed in the period and gone by its end are protected as a count", () => {
    const gone = cellWhere(sample, { column: "followed in the period and gone by its end" });
    const days = Array.from({ length: asOf - from + 1 }, (_, at) => from + at);
    const expected = children.filter((child) => !followedOn(child, asOf) && days.some((day) => followedOn(child, day)));
    expect(gone).toMatchObject({ count: expected.length, showing: "never" });
  });

  test("children who are followed no more are counted skill by skill", () => {
    const gone = cellWhere(sample, { subject: "skill hand-to-hand (corrected)", column: "gone, never looked at" });
    const skill = cohort.skills.findIndex(({ id }) => id === "hand-to-hand");
    const looked = (child: number) =>
      sample.estimates.context.attainment.lastLook[child * cohort.skills.length + skill]! > -2_147_483_648;
    const expected = children.filter(
      (child) => !followedOn(child, asOf) && cohort.following.firstDayUpTo(child, asOf) !== null && !looked(child),
    );
    expect(gone.count).toBe(expected.length);
  });
});

test("median days leave only where referrals of enough families have come that far", () => {
  const few = sampleDraft(["referral-steps"], { from: "2025-10-01", minimumCell: 1000 });
  const median = (draft: SampleDraft) => trueRows(draft.drafts[0]!, draft).map((row) => row["medianDays"]);
  expect(median(few).every((each) => each === null)).toBe(true);
  expect(median(sampleDraft(["referral-steps"], { from: "2025-10-01" })).some((each) => each !== null)).toBe(true);
});

test("ratings: coverage gives back who left, so they are a count of the release, and the unrated are protected", () => {
  const rows = trueRows(
    sample.drafts.find(({ id }) => id === "ratings")!,
    sample,
  );
  const leavers = cellWhere(sample, { population: "left after six months" });
  expect(leavers.showing).toBe("table");
  for (const row of rows.filter((each) => each["statement"] === 2)) {
    expect(Number(row["coverage"]) * (leavers.count as number)).toBeCloseTo(Number(row["of"]), 9);
    const unrated = cellWhere(sample, { population: "rated", subject: String(row["outcome"]), column: "unrated" });
    expect(unrated).toMatchObject({ count: (leavers.count as number) - Number(row["of"]), showing: "never" });
  }
});
