import { readFileSync } from "node:fs";
import { isoOf } from "../../src/age/day";
import { makeSample, type SampleTable } from "../../src/sample/make-sample";
import { SKILLS } from "../../src/sample/skills";
import type { OracleInput, Result } from "../oracle/input";
import { oracleTables } from "../oracle/oracle-tables";
import { percentile, shareBy, slowNpmle } from "../oracle/slow-npmle";

/** The question of the README, answered from the invented tables by the second implementation, which shares no code with the program. */
const sample = makeSample({ children: 240, seed: 7 });
const DAYS = 30.4375;
const WALK = "walk-alone";
const readme = readFileSync("README.md", "utf8").replace(/\n> /g, " ");

const table = (name: string): SampleTable => sample.tables.find((each) => each.name === name)!;
const gestationOf = new Map(sample.known.children.map(({ id, gestation }) => [id, gestation.days]));
const iso = (day: unknown): string | null => (day === null ? null : isoOf(day as number));

/** Walking and what follows it: no other skill bears on the answer. */
const chain = [WALK, "run", "jump"];
const input: OracleInput = {
  children: table("Children").rows.map(([child, birth, , site, therapist, enrolled, left]) => ({
    child: String(child),
    birth: iso(birth)!,
    gestation: gestationOf.get(String(child)) ?? null,
    site: String(site),
    therapist: String(therapist),
    enrolled: iso(enrolled),
    left: iso(left),
  })),
  observations: table("Observations")
    .rows.filter(([, skill]) => chain.includes(String(skill)))
    .map(([child, skill, date, result, observer, entered]) => ({
      child: String(child),
      skill: String(skill),
      date: iso(date)!,
      result: result as Result,
      observer: observer === null ? null : String(observer),
      entered: iso(entered),
    })),
  skills: SKILLS.filter(({ id }) => chain.includes(id)).map((skill) => ({
    skill: skill.id,
    label: skill.label,
    area: skill.area,
    opens: skill.opensMonths,
    closes: skill.closesMonths,
    ageBasis: skill.ageBasis || null,
    expectedShare: skill.expectedShare,
    follows: skill.id === WALK ? null : skill.follows,
  })),
  settings: {
    asOf: "2026-09-30",
    from: null,
    enteredBy: null,
    belowDays: 259,
    untilMonths: 24,
    edges: [0, 3, 6, 9, 12, 18, 24, 36],
    recheckDays: 90,
    by: [],
  },
};
const answers = oracleTables(input);
const one = (value: number): string => value.toFixed(1);

test("the counts of the README are those of the second implementation", () => {
  const age = answers["age-when-met"].find((row) => row["skill"] === WALK)!;
  const band = answers["met-by-band"].find((row) => row["skill"] === WALK && row["band"] === "12 to <18 months")!;
  for (const said of [
    `**${one(age["recordedMedian"] as number)} months**`,
    `of ${age["children"]} children observed, ${age["hadAtFirstLook"]} `,
    ` ${age["interval"]} began `,
    ` and ${age["notMet"]} had not`,
    `${band["met"]} of the ${band["assessed"]} children`,
  ]) {
    expect(readme).toContain(said);
  }
});

test("the estimates of the README are those of the slow estimate from the same intervals", () => {
  const intervals = answers["age-intervals"].filter((row) => row["skill"] === WALK);
  const estimate = slowNpmle(
    intervals.map(({ after, by }) => ({ after: after as number, by: by === null ? Infinity : (by as number) })),
  );
  const months = (p: number): string => one(percentile(estimate, p)! / DAYS);
  expect(readme).toContain(`half walk by **${months(0.5)} months**`);
  expect(readme).toContain(`a quarter by ${months(0.25)} and nine in ten by ${months(0.9)} months`);
  expect(readme).toContain(`an estimated **${one(shareBy(estimate, 17.6 * DAYS)! * 100)}%**`);
});
