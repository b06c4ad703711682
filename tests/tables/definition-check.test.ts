import fc from "fast-check";
import { readRecords, RecordsUnusable } from "../../src/records/read-records";
import { parseSettings, type Settings } from "../../src/settings/settings";
import { definitionCheck, definitionCheckTable } from "../../src/tables/definition-check/definition-check";
import type { DefinitionCheck } from "../../src/tables/definition-check/evaluate";
import { type Figure, figureFrom } from "../../src/tables/definition-check/figure";
import { checkSentence, dotLines } from "../../src/tables/definition-check/words";
import { asWorkbook } from "../oracle/as-workbook";
import { addDays } from "../oracle/calendar";
import type { OracleInput, OracleSettings } from "../oracle/input";
import { oracleTables } from "../oracle/oracle-tables";
import { child, look, program, skill } from "../oracle/programs";
import { cohortArbitrary } from "../oracle/random-cohort";
import { entriesOf } from "./referrals-book";

const SITS: Figure = {
  ...{ table: "met-by-band", groups: [], skill: "sits", area: null, kind: null, band: "12 to <18 months" },
  column: "shareMet",
};

function settingsOf(input: OracleInput): Settings {
  const parsed = parseSettings(entriesOf(input), 1900);
  if ("messages" in parsed) throw new Error(parsed.messages.join(" "));
  return parsed.settings;
}

function checked(input: OracleInput, figure: Figure): DefinitionCheck {
  const settings = settingsOf(input);
  const check = definitionCheck(readRecords(asWorkbook(input), settings, []), settings, figure);
  if ("reason" in check) throw new Error(check.reason);
  return check;
}

const valueOf = (check: DefinitionCheck, ...parts: string[]) =>
  check.results.filter(({ text }) => parts.every((part) => text.split("; ").includes(part))).map(({ value }) => value);

describe("by hand, as of June 30, 2024", () => {
  const AS_OF = "2024-06-30";
  const input = program(
    [
      child("A", "2023-05-30"), // 13 months
      child("B", "2023-05-30"),
      child("C", "2023-06-30"), // 12 months to the day
      child("D", "2023-07-15"), // 11.5 months
    ],
    [
      look("A", "2024-06-01", "met"),
      look("B", "2024-06-01", "met", { observer: "X" }),
      look("B", "2024-06-01", "not met", { observer: "Y" }),
      look("C", "2024-03-22", "not met"), // 100 days before
      look("D", "2024-06-01", "not met"),
    ],
  );
  const check = checked(input, SITS);

  test("the run's own comes first: of A, B and C, C needs a recheck after 90 days and B counts as not met, 1 of 2", () => {
    expect(check.results[0]).toMatchObject({
      text: "correctUntil 24; recheck 90; disagreement not met; met by observation; edges 12, 18",
      ...{ value: 1 / 2, count: 1, of: 2 },
    });
  });

  test.each([
    ["recheck 120: C counts, 1 of 3", ["recheck 120", "disagreement not met", "edges 12, 18"], 1 / 3],
    ["disagreement met: B counts as met, 2 of 2", ["recheck 90", "disagreement met", "edges 12, 18"], 2 / 2],
    ["from 11 months: D too, 1 of 3", ["recheck 90", "disagreement not met", "edges 11, 18"], 1 / 3],
    ["from 13 months: C is out, 1 of 2", ["recheck none", "disagreement not met", "edges 13, 18"], 1 / 2],
    ["all three: 2 of 4", ["recheck none", "disagreement met", "edges 11, 17"], 2 / 4],
  ])("%s", (_, parts, value) => {
    for (const each of valueOf(check, "met by observation", ...parts)) expect(each).toBe(value);
    expect(valueOf(check, "met by observation", ...parts)).toHaveLength(4);
  });

  test("4 rules of correcting x 4 rechecks x 2 disagreements x 2 ways of meeting x 9 pairs of edges, each once", () => {
    expect(new Set(check.results.map(({ text }) => text)).size).toBe(4 * 4 * 2 * 2 * 9);
    expect(definitionCheckTable(check).rows).toHaveLength(576);
  });

  test("from a base under 20 no percent stands anywhere in the words", () => {
    expect([...definitionCheckTable(check).notes, ...dotLines(check)].join(" ")).not.toContain("%");
    expect(checkSentence(check)).toMatch(/^Between .* of \d and .* of \d under the \d+ defensible choices; /);
  });

  test("the choice that moves it most, alone: disagreement from 1 of 2 to 2 of 2", () => {
    expect(checkSentence(check)).toMatch(/; how different results on one day count moves it most\.$/);
  });

  /**
   * Met in (300, 330] by A and B and in (600, 700] by D; C not by day 400. By hand, the likelihood p^2 (1 - p) (1 - p) is
   * largest at p = 1/2, and C's half goes where D's is. E is 315 days old: half of the way through (300, 330], so 1/4.
   */
  test("by estimate: 1/2 for three children of 500 days, and 1/4 for one of 315 whom nobody checked", () => {
    const aged = (id: string, days: number) => child(id, addDays(AS_OF, -days));
    const on = (id: string, age: number, days: number, result: "met" | "not met") =>
      look(id, addDays(AS_OF, age - days), result);
    const few = program(
      [aged("A", 500), aged("B", 500), aged("C", 500), aged("D", 720), aged("E", 315)],
      [
        ...["A", "B"].flatMap((id) => [on(id, 300, 500, "not met"), on(id, 330, 500, "met")]),
        on("C", 400, 500, "not met"),
        ...[on("D", 600, 720, "not met"), on("D", 700, 720, "met")],
      ],
    );
    const estimate = (band: string, edges: string) =>
      valueOf(checked(few, { ...SITS, band }), "met by estimate", edges, "recheck 90", "disagreement not met")[0];
    expect(estimate("12 to <18 months", "edges 12, 18")).toBeCloseTo(1 / 2, 6);
    expect(() => checked(few, { ...SITS, band: "9 to <12 months" })).toThrow("empty under the settings of this run");
    expect(estimate("12 to <18 months", "edges 11, 18")).toBeCloseTo(1 / 2, 6);
    const wider = checked(
      { ...few, settings: { ...few.settings, edges: [0, 10, 18] } },
      { ...SITS, band: "10 to <18 months" },
    );
    expect(valueOf(wider, "met by estimate", "edges 10, 18", "recheck 90")[0]).toBeCloseTo((3 / 2 + 1 / 4) / 4, 6);
  });
});

/** The settings of a choice, as the second implementation takes them. */
function oracleSettings(settings: OracleSettings, text: string): OracleSettings {
  const parts = new Map(text.split("; ").map((part) => [part.split(" ")[0], part.split(" ").slice(1).join(" ")]));
  const until = parts.get("correctUntil") ?? "24";
  return {
    ...settings,
    belowDays: parts.has("correctBelow") ? 0 : settings.belowDays,
    untilMonths: /^\d+$/.test(until) ? Number(until) : (until as "always"),
    recheckDays: parts.get("recheck") === "none" ? Infinity : Number(parts.get("recheck") ?? settings.recheckDays),
    disagreement: parts.get("disagreement") as "met" | "not met",
    edges: parts.get("edges")?.split(", ").map(Number) ?? settings.edges,
  };
}

describe("against the second implementation of the tables", () => {
  const random = cohortArbitrary().filter(({ settings }) => settings.by.length === 0);

  test.each(["shareMet", "outOfDate", "lost"])("every choice by observation gives its %s of met-by-band", (column) => {
    fc.assert(
      fc.property(random, fc.array(fc.nat(10_000), { minLength: 3, maxLength: 3 }), (input, picks) => {
        const found = firstFigure(input, column);
        if (found === null) return;
        const results = found.results.filter(({ text }) => !text.includes("met by estimate"));
        for (const pick of picks) {
          const { text, value } = results[pick % results.length]!;
          const settings = oracleSettings(input.settings, text);
          const rows = oracleTables({ ...input, settings })["met-by-band"];
          const row = rows.find(
            (each) => each.skill === found.figure.skill && String(each.band).startsWith(`${settings.edges[0]} to`),
          );
          expect([text, value]).toEqual([text, row?.[column] ?? null]);
        }
      }),
      { numRuns: 12 },
    );
  });

  /** The first row of met-by-band, between two edges, in which the column has a figure. */
  function firstFigure(input: OracleInput, column: string): DefinitionCheck | null {
    const row = oracleTables(input)["met-by-band"].find(
      (each) => each.skill !== "all" && / to </.test(String(each.band)) && each[column] !== null,
    );
    if (row === undefined) return null;
    const figure: Figure = { ...SITS, skill: String(row.skill), band: String(row.band), column };
    try {
      return checked(input, figure);
    } catch (error) {
      if (error instanceof RecordsUnusable) return null;
      throw error;
    }
  }
});

describe("the name of a figure", () => {
  const { skills } = readRecords(
    asWorkbook(program([child("A", "2023-01-01")], [look("A", "2024-01-01", "met")], { skills: [skill("sits")] })),
    settingsOf(program([], [])),
    [],
  );
  const read = (text: string, groups = 0) => figureFrom(text, skills, groups);

  test("an age group in quotation marks, groups before the skill, an area after all", () => {
    expect(read('met-by-band/sits/"12 to <18 months"/shareMet')).toEqual({ figure: SITS });
    expect(read('met-by-band/North/SITS/"12 to <18 months"/shareMet', 1)).toEqual({
      figure: { ...SITS, groups: ["North"] },
    });
    expect(read("expected-by-now/all/speech/0.75/shareMet")).toMatchObject({
      figure: { table: "expected-by-now", skill: "all", area: "speech", kind: "0.75", band: null, column: "shareMet" },
    });
    expect(read("age-when-met/sits/p50")).toMatchObject({
      figure: { table: "age-when-met", band: null, column: "p50" },
    });
  });

  test.each([
    ["trend/sits/met", /Begin the figure with one of these tables/],
    ["met-by-band/flies/12 to <18 months/met", /No skill of that name/],
    ["met-by-band/sits/met", /Name the figure as met-by-band/],
    ['met-by-band/sits/"12 to <18 months"/lower', /limits cannot be checked/],
    ["", /Begin the figure/],
  ])("%s is refused with a sentence", (text, message) => {
    expect(read(text)).toEqual({ message: expect.stringMatching(message) });
  });
});
