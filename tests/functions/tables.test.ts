/** Table functions against the second implementation (tests/oracle), which shares no code with the program. */
import fc from "fast-check";
import { metByBand as metByBandInSheet, skillStatus as skillStatusInSheet } from "../../functions";
import { buildCohort } from "../../src/cohort/cohort";
import { workbookOfRanges } from "../../src/records/ranges";
import { readRecords } from "../../src/records/read-records";
import { ruleOf } from "../../src/records/findings/rules";
import { parseSettings } from "../../src/settings/settings";
import { ageWhenMet } from "../../src/tables/age-when-met";
import { tableContext } from "../../src/tables/context";
import { AgeEstimates } from "../../src/tables/estimates";
import { oracleEstimates } from "../oracle/estimates";
import type { OracleInput } from "../oracle/input";
import { oracleTables } from "../oracle/oracle-tables";
import { child, program, skill } from "../oracle/programs";
import { cohortArbitrary } from "../oracle/random-cohort";
import { MEASURED, SIX_CHILDREN } from "../oracle/six-children";
import type { CallError } from "../../src/cli/call";
import { answerOf, column, rowsOf } from "./call";
import { argumentsOf, asRows, pick, type Range, sorted } from "./ranges";

const STATUS_KEYS = ["child", "skill", "area", "ageMonths", "window", "box", "timing", "metAfter", "metBy", "lastLook"];
const STATUS_HEADER = [
  ...["Child", "Skill", "Area", "Age (months)", "Window", "Box", "Timing", "Met after", "Met by", "Last checked"],
];
const BAND_KEYS = [
  ...["skill", "area", "band", "children", "hadAtFirstLook", "gained", "notMet", "outOfDate", "lost", "notAssessed"],
  ...["assessed", "met", "shareMet", "lower", "upper", "lowest", "highest"],
];

type Numbers = readonly (number | null)[];

/** A program that the function refuses as a whole has a bad row, which is tested apart; there is nothing to compare. */
function spilledOf(name: string, input: OracleInput): readonly (readonly unknown[])[] {
  const { tables, asOf, settings } = argumentsOf(input);
  const args = name === "METBYBAND" ? [...tables, asOf, null, settings] : [...tables, asOf, settings];
  const answer = answerOf(name, ...args);
  fc.pre("result" in answer);
  return "result" in answer ? answer.result : [];
}

function expectSame(ours: readonly unknown[], theirs: readonly unknown[]): void {
  const near = (value: unknown): unknown =>
    typeof value === "number" && !Number.isInteger(value) ? expect.closeTo(value, 9) : value;
  const rounded = (rows: readonly unknown[]) =>
    rows.map((row) => Object.fromEntries(Object.entries(row as object).map(([key, value]) => [key, near(value)])));
  expect(sorted(ours)).toEqual(rounded(sorted(theirs)));
}

describe("random programs", () => {
  const runs = { numRuns: Number(process.env.WINDOWLINE_RUNS ?? 40) };

  test("SKILLSTATUS", () => {
    fc.assert(
      fc.property(cohortArbitrary(), (input) => {
        const spilled = spilledOf("SKILLSTATUS", input);
        expect(spilled[0]).toEqual(STATUS_HEADER);
        const theirs = oracleTables(input)["skill-status"].map((row) => pick(row, STATUS_KEYS));
        expectSame(asRows(spilled, STATUS_KEYS), theirs);
      }),
      runs,
    );
  });

  test("ATTAINMENT", () => {
    fc.assert(
      fc.property(cohortArbitrary(), (input) => {
        const spilled = spilledOf("ATTAINMENT", input);
        expect(spilled[0]).toEqual(["Child", "Skill", "After", "By"]);
        const keys = ["child", "skill", "after", "by"];
        expectSame(
          asRows(spilled, keys),
          oracleTables(input)["age-intervals"].map((row) => pick(row, keys)),
        );
      }),
      runs,
    );
  });

  test("METBYBAND, its group columns first", () => {
    fc.assert(
      fc.property(cohortArbitrary(), (input) => {
        const spilled = spilledOf("METBYBAND", input);
        const keys = [...input.settings.by, ...BAND_KEYS];
        expect(spilled[0]?.slice(0, input.settings.by.length)).toEqual(input.settings.by);
        expectSame(
          asRows(spilled, keys),
          oracleTables(input)["met-by-band"].map((row) => pick(row, keys)),
        );
      }),
      runs,
    );
  });

  test("EXPECTEDBYNOW", () => {
    fc.assert(
      fc.property(cohortArbitrary(), (drawn) => {
        // the ranges of these tests hold no column Expected share
        const input = { ...drawn, skills: drawn.skills.map((skill) => ({ ...skill, expectedShare: null })) };
        const spilled = spilledOf("EXPECTEDBYNOW", input);
        const wanted = oracleTables(input)["expected-by-now"];
        const at = [
          "skill",
          "area",
          "kind",
          "children",
          "beforeWindow",
          "inWindow",
          "pastWindow",
          "met",
          "notMet",
          "lost",
        ];
        expect(spilled[0]).toHaveLength(21);
        expectSame(
          asRows(
            spilled.map((row) => row.slice(0, at.length)),
            at,
          ),
          wanted.map((row) => pick(row, at)),
        );
      }),
      runs,
    );
  });

  test("the same rows with 0 in every empty cell of Children and Observations, as some hosts hand them over", () => {
    fc.assert(
      fc.property(cohortArbitrary(), (input) => {
        const { tables, asOf } = argumentsOf({ ...input, settings: { ...input.settings, by: [] } });
        const [children, observations, skills] = tables as [Range, Range, Range];
        const zeros = (range: Range): Range => range.map((row) => row.map((cell) => cell ?? 0));
        for (const name of ["SKILLSTATUS", "ATTAINMENT", "METBYBAND"]) {
          const [withNull, withZero] = [
            answerOf(name, children, observations, skills, asOf),
            answerOf(name, zeros(children), zeros(observations), skills, asOf),
          ];
          expect(withZero).toEqual(withNull);
        }
      }),
      { numRuns: 40 },
    );
  });
});

describe("six children, worked by hand", () => {
  const { tables, asOf } = argumentsOf(SIX_CHILDREN);

  test("ATTAINMENT in days counted on a calendar", () => {
    expect(rowsOf("ATTAINMENT", ...tables, asOf).slice(1)).toEqual(
      MEASURED.map((each) => [each.child, "sits", each.age.after, each.age.by]),
    );
  });

  test("METBYBAND by the columns named in its own argument, before those of the settings", () => {
    const bySite = rowsOf("METBYBAND", ...tables, asOf, "Site", [["by", "Therapist"]]);
    expect(bySite[0]?.[0]).toBe("Site");
    expect(bySite).toEqual(rowsOf("METBYBAND", ...tables, asOf, [["Site"], [0]]));
    expect(rowsOf("METBYBAND", ...tables, asOf, [["Site", "Therapist"]])[0]?.slice(0, 2)).toEqual([
      "Site",
      "Therapist",
    ]);
    expect(rowsOf("METBYBAND", ...tables, asOf, 0)).toEqual(rowsOf("METBYBAND", ...tables, asOf));
  });

  test("in a sheet: a share of nobody is #N/A, the interval of an area's row blank, and a cell without a value too", () => {
    const unseen = argumentsOf(program([child("A", "2023-09-30")], [], { skills: [skill("sits")] }));
    const looked = [
      ["Child", "Skill", "Date", "Result"],
      ["A", "sits", "2023-12-01", "not met"],
    ];
    const [children, , skills] = unseen.tables as [Range, Range, Range];
    const [, row, area] = metByBandInSheet(children, looked, skills, "2024-06-30");
    expect(row?.slice(12, 15)).toEqual(Array(3).fill(expect.objectContaining({ code: "#N/A" })));
    expect(area?.[0]).toBe("all");
    const [, , , areaOfSix] = metByBandInSheet(...(tables as [Range, Range, Range]), asOf);
    expect(areaOfSix?.slice(12, 15)).toEqual([1 / 3, "", ""]);
    expect(skillStatusInSheet(children, looked, skills, "2024-06-30")[1]?.slice(6, 9)).toEqual(["", "", ""]);
  });
});

test("AGEWHENMET of ATTAINMENT's columns is table 3, limits and all", () => {
  fc.assert(
    fc.property(cohortArbitrary({ maxChildren: 20, maxSkills: 1 }), (drawn) => {
      const input = { ...drawn, settings: { ...drawn.settings, by: [] } };
      const rows = spilledOf("ATTAINMENT", input).slice(1);
      fc.pre(rows.some((row) => row[3] === null));
      const estimates = rowsOf("AGEWHENMET", ...[2, 3].map((at) => column(rows.map((row) => row[at])))) as Numbers[];
      const inMonths = (days: number | null | undefined) => (typeof days === "number" ? days / 30.4375 : null);
      const [theirs] = oracleEstimates(input)["age-when-met"];
      ["p10", "p25", "p50", "p75", "p90"].forEach((key, at) => {
        const expected = theirs?.[key] ?? null;
        expect(inMonths(estimates[at]?.[1])).toEqual(expected === null ? null : expect.closeTo(expected as number, 6));
      });
      const [, lower, upper] = tableThree(input);
      expect([inMonths(estimates[2]?.[2]), inMonths(estimates[2]?.[3])]).toEqual([lower, upper]);
    }),
    { numRuns: 40 },
  );
});

/** Median and its limits, months, as the report has them. */
function tableThree(input: OracleInput): Numbers {
  const { tables, asOf, settings } = argumentsOf(input);
  const [children, observations, skills] = tables;
  const parsed = parseSettings({ ...Object.fromEntries(settings), asOf }, 1900);
  if ("messages" in parsed) throw new Error(parsed.messages.join(" "));
  const records = readRecords(workbookOfRanges({ children, observations, skills }, 1900), parsed.settings);
  const table = ageWhenMet(new AgeEstimates(tableContext(buildCohort(records, parsed.settings), parsed.settings)));
  const at = (key: string) => table.columns.findIndex((each) => each.key === key);
  return ["p50", "p50Lower", "p50Upper"].map((key) => table.rows[0]?.[at(key)] as number | null);
}

describe("an edit is always seen", () => {
  test("answers are remembered by what the arguments hold, not by which they are", () => {
    const { tables, asOf } = argumentsOf(SIX_CHILDREN);
    const [children, observations, skills] = tables as [Range, Range, Range];
    const before = rowsOf("ATTAINMENT", children, observations, skills, asOf);
    const copy = observations.map((row) => [...row]);
    expect(rowsOf("ATTAINMENT", children, copy, skills, asOf)).toEqual(before);
    copy[2] = ["A", "sits", "2024-04-11", "met", null, null];
    expect(rowsOf("ATTAINMENT", children, copy, skills, asOf)[1]).toEqual(["A", "sits", 102, 194]);
    expect(rowsOf("ATTAINMENT", children, observations, skills, asOf)).toEqual(before);
  });
});

describe("rows that are not used", () => {
  const { tables, asOf } = argumentsOf(SIX_CHILDREN);
  const [children, observations, skills] = tables as [Range, Range, Range];
  const usual = rowsOf("SKILLSTATUS", children, observations, skills, asOf);
  const withRow = (row: (string | number | null)[]) => [...observations, row];

  test.each([
    ["after the as-of date", ["A", "sits", "2024-07-01", "lost", null, null]],
    ["an exact copy", ["B", "sits", "2024-06-01", "met", null, null]],
    ["a total", ["Total", null, null, 7, null, null]],
    ["blank", [null, null, null, null, null, null]],
    ["of zeros", [0, 0, 0, 0, 0, 0]],
  ])("a row %s changes nothing", (_why, row) => {
    expect(rowsOf("SKILLSTATUS", children, withRow(row), skills, asOf)).toEqual(usual);
  });

  test.each([
    ["date-unreadable", "C", ["A", "sits", "canary", "met", null, null]],
    ["result-unknown", "D", ["A", "sits", "2024-05-01", "canary", null, null]],
    ["child-unknown", "A", ["canary", "sits", "2024-05-01", "met", null, null]],
    ["date-before-birth", "C", ["A", "sits", "2023-05-01", "met", null, null]],
  ])("a bad row (%s) makes the call an error that names the row and what to do", (rule, at, row) => {
    const { expected, advice } = ruleOf(rule);
    for (const name of ["SKILLSTATUS", "ATTAINMENT", "METBYBAND"]) {
      const { error, message } = answerOf(name, children, withRow(row), skills, asOf) as CallError;
      expect(error).toBe("#VALUE!");
      expect(message).toMatch(new RegExp(`^Observations row 9, column ${at}: expected .+\\. .+`));
      expect(message).toContain(advice);
      if (rule !== "date-unreadable") expect(message).toContain(expected);
      expect(message).not.toContain("canary");
    }
  });

  test("several bad rows are counted beside the first", () => {
    const two = [...withRow(["A", "sits", "soon", "met", null, null]), ["A", "sits", null, "met", null, null]];
    expect(answerOf("ATTAINMENT", children, two, skills, asOf)).toMatchObject({
      error: "#VALUE!",
      message: expect.stringMatching(/^Observations row 9, .* \(and 1 more\)$/),
    });
  });

  test("a child left out is named where the fault is, not at each of its looks", () => {
    const twice = [...children, ["A", "2023-09-29", null, "North", "T1", "2024-03-01", null]];
    expect(answerOf("ATTAINMENT", twice, observations, skills, asOf)).toMatchObject({
      message: expect.stringMatching(/^Children row \d+, column B: expected one birth date in all rows of a child/),
    });
  });

  test("ranges without the headings they need", () => {
    const answer = answerOf("ATTAINMENT", [["Child"], ["A"]], observations, skills, asOf);
    expect(answer).toMatchObject({ error: "#VALUE!", message: expect.stringMatching(/^Children.*Birth date/) });
    expect(answerOf("ATTAINMENT", children, observations, null, asOf)).toMatchObject({ error: "#VALUE!" });
  });
});

describe("settings and the as-of date", () => {
  const { tables } = argumentsOf(SIX_CHILDREN);

  test.each([
    [[null], "asOf is empty: give a date."],
    [["June"], "asOf is not a date: use a cell with a date, or text such as 2026-09-30."],
    [
      ["2024-06-30", [["recheck", "often"]]],
      "settings: recheck must be a whole number of days from 1 to 3650, or none.",
    ],
    [
      [
        "2024-06-30",
        [
          ["recheck", 60],
          ["recheck", 90],
        ],
      ],
      "settings: recheck is there twice. Clear one of the two.",
    ],
    [["2024-06-30", [["recheck"]]], "settings: give a range of two columns, the names and the values."],
    [
      ["2024-06-30", [["correctUntil", 0]]],
      'settings: correctUntil is 0. Clear its name for 24, or set correctBelow to "never".',
    ],
  ])("%j is refused", (args, message) => {
    expect(answerOf("SKILLSTATUS", ...tables, ...args)).toEqual({ error: "#VALUE!", message });
  });

  test("a column that Children does not have is named with those it has", () => {
    const { error, message } = answerOf("METBYBAND", ...tables, "2024-06-30", "Region") as CallError;
    expect(error).toBe("#VALUE!");
    expect(message).toMatch(/Children has no column.*: Site, Therapist/);
  });

  test("names without a value, or with 0 from an empty cell, are left out", () => {
    const usual = rowsOf("SKILLSTATUS", ...tables, "2024-06-30");
    const left = [
      ["recheck", null],
      ["level", 0],
      ["edges", ""],
      [0, 0],
      [null, null],
    ];
    expect(rowsOf("SKILLSTATUS", ...tables, "2024-06-30", left)).toEqual(usual);
  });
});
