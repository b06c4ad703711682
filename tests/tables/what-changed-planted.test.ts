/**
 * One change at a time, planted by hand: each cause gives its own part and no other. The expected figures are counted on paper
 * from the rows below; the causes are those of METHOD.md, section 6.
 */
import { child, look, program, skill } from "../oracle/programs";
import type { OracleInput, OracleSettings } from "../oracle/input";
import { changesOf } from "./changed-rows";
import { bridgeInWords, bridgesOf } from "../../src/report/changed/bridges";
import { PARTS } from "../../src/tables/what-changed/parts";

/** June 30, 2024: A has met it, B was not yet seen with it on May 1 (60 days before), C was never checked. All are 7 months old. */
const CHILDREN = ["A", "B", "C"].map((id) => child(id, "2023-11-10", { enrolled: "2024-01-10" }));
const CHECKS = [look("A", "2024-05-01", "met"), look("B", "2024-05-01", "not met")];
const EARLIER = program(CHILDREN, CHECKS);
const BAND = "6 to <9 months";

type Edit = { rows?: Partial<OracleInput>; settings?: Partial<OracleSettings> };

function later({ rows = {}, settings = {} }: Edit): OracleInput {
  return { ...EARLIER, ...rows, settings: { ...EARLIER.settings, from: null, ...settings } };
}

/** The parts that are not nothing, by measure, in one age group of the one skill. */
function parts(after: OracleInput, band = BAND, before = EARLIER): Record<string, Record<string, number>> {
  const own = changesOf(before, after).cells.filter((each) => each.skill === "sits" && each.band === band);
  return Object.fromEntries(
    own.map(({ measure, parts: all }) => [
      measure,
      Object.fromEntries(PARTS.flatMap((part, at) => (all[at] === 0 ? [] : [[part, all[at] as number]]))),
    ]),
  );
}

const NOTHING = { children: {}, assessed: {}, met: {} };

test("the same workbook on the same day: nothing changed", () => {
  expect(parts(later({}))).toEqual(NOTHING);
});

describe("what the later workbook says otherwise about the earlier day", () => {
  test("a check entered late", () => {
    const observations = [...CHECKS, look("C", "2024-06-01", "met")];
    expect(parts(later({ rows: { observations } }))).toEqual({
      ...NOTHING,
      assessed: { enteredLate: 1 },
      met: { enteredLate: 1 },
    });
  });

  test("a result corrected", () => {
    const observations = [look("A", "2024-05-01", "not met"), look("B", "2024-05-01", "not met")];
    expect(parts(later({ rows: { observations } }))).toEqual({ ...NOTHING, met: { corrected: -1 } });
  });

  test("the day of a check corrected: gone on one day and new on another is one correction", () => {
    const observations = [look("A", "2024-05-01", "met"), look("B", "2024-03-01", "not met")];
    expect(parts(later({ rows: { observations } }))).toEqual({ ...NOTHING, assessed: { corrected: -1 } });
  });

  test("a check removed", () => {
    expect(parts(later({ rows: { observations: CHECKS.slice(1) } }))).toEqual({
      ...NOTHING,
      assessed: { removed: -1 },
      met: { removed: -1 },
    });
  });

  test("a child removed", () => {
    const rows = { children: CHILDREN.slice(1), observations: CHECKS.slice(1) };
    const part = { removed: -1 };
    expect(parts(later({ rows }))).toEqual({ children: part, assessed: part, met: part });
  });

  test("a child entered late: it was enrolled by then", () => {
    const rows = { children: [...CHILDREN, child("D", "2023-11-10", { enrolled: "2024-02-01" })] };
    expect(parts(later({ rows }))).toEqual({ ...NOTHING, children: { enteredLate: 1 } });
  });

  test("a birth date corrected moves a child to another age group, in both", () => {
    const [a, ...others] = CHILDREN as [(typeof CHILDREN)[number], ...typeof CHILDREN];
    const after = later({ rows: { children: [{ ...a, birth: "2023-08-10" }, ...others] } });
    const [gone, come] = [{ corrected: -1 }, { corrected: 1 }];
    expect(parts(after)).toEqual({ children: gone, assessed: gone, met: gone });
    expect(parts(after, "9 to <12 months")).toEqual({ children: come, assessed: come, met: come });
  });

  test("a day of leaving filled in, before the earlier day", () => {
    const [a, ...others] = CHILDREN as [(typeof CHILDREN)[number], ...typeof CHILDREN];
    const part = { enteredLate: -1 };
    const after = later({ rows: { children: [{ ...a, left: "2024-06-01" }, ...others] } });
    expect(parts(after)).toEqual({ children: part, assessed: part, met: part });
  });

  test("what is dated after the earlier day is none of it", () => {
    const [a, ...others] = CHILDREN as [(typeof CHILDREN)[number], ...typeof CHILDREN];
    const rows = {
      children: [{ ...a, left: "2024-07-10" }, ...others, child("D", "2023-11-10", { enrolled: "2024-07-02" })],
      observations: [...CHECKS, look("C", "2024-07-01", "met")],
    };
    expect(parts(later({ rows }))).toEqual(NOTHING);
  });

  test("a change that no figure depends on is no cause", () => {
    const [a, ...others] = CHILDREN as [(typeof CHILDREN)[number], ...typeof CHILDREN];
    const rows = { children: [{ ...a, therapist: "T9", site: "South" }, ...others] };
    expect(parts(later({ rows }))).toEqual(NOTHING);
  });
});

describe("definitions", () => {
  test("a shorter limit for a recheck", () => {
    expect(parts(later({ settings: { recheckDays: 30 } }))).toEqual({ ...NOTHING, assessed: { definition: -1 } });
  });

  test("a new skill, whose checks were there before", () => {
    const rows = { skills: [skill("sits"), skill("stands")] };
    const found = changesOf(EARLIER, later({ rows })).cells.filter((each) => each.skill === "stands");
    expect(found.map(({ measure, parts: all }) => [measure, all[PARTS.indexOf("definition")]])).toEqual([
      ["children", 3],
      ["assessed", 0],
      ["met", 0],
    ]);
  });

  test("a skill that is no longer listed goes with the definitions, not with what was removed", () => {
    const two = { ...EARLIER, skills: [skill("sits"), skill("stands")] };
    const found = changesOf(
      { ...two, observations: [...CHECKS, { ...CHECKS[0]!, skill: "stands" }] },
      later({ rows: { observations: [...CHECKS, { ...CHECKS[0]!, skill: "stands" }] } }),
    );
    const stands = found.cells.filter((each) => each.skill === "stands");
    expect(stands.map(({ parts: all }) => all[PARTS.indexOf("definition")])).toEqual([-3, -1, -1]);
    expect(stands.every(({ parts: all }) => all[PARTS.indexOf("removed")] === 0)).toBe(true);
  });
});

describe("time", () => {
  const JULY = { settings: { asOf: "2024-07-15" } };

  test("two weeks in which nothing happened", () => {
    expect(parts(later(JULY))).toEqual(NOTHING);
  });

  test("a child joined", () => {
    const rows = { children: [...CHILDREN, child("D", "2023-12-10", { enrolled: "2024-07-02" })] };
    expect(parts(later({ rows, ...JULY }))).toEqual({ ...NOTHING, children: { joined: 1 } });
  });

  test("a child left", () => {
    const [a, ...others] = CHILDREN as [(typeof CHILDREN)[number], ...typeof CHILDREN];
    const part = { left: -1 };
    const after = later({ rows: { children: [{ ...a, left: "2024-07-10" }, ...others] }, ...JULY });
    expect(parts(after)).toEqual({ children: part, assessed: part, met: part });
  });

  test("a child met it since", () => {
    const rows = { observations: [...CHECKS, look("B", "2024-07-01", "met")] };
    expect(parts(later({ rows, ...JULY }))).toEqual({ ...NOTHING, met: { metSince: 1 } });
  });

  test("a child lost it", () => {
    const rows = { observations: [...CHECKS, look("A", "2024-07-01", "lost")] };
    expect(parts(later({ rows, ...JULY }))).toEqual({ ...NOTHING, met: { lost: -1 } });
  });

  test("a check became old: on August 1, that of May 1 is 92 days old", () => {
    expect(parts(later({ settings: { asOf: "2024-08-01" } }))).toEqual({ ...NOTHING, assessed: { needsRecheck: -1 } });
  });

  test("a child checked again, and not yet seen with it", () => {
    const rows = { observations: [...CHECKS, look("C", "2024-07-01", "not met")] };
    expect(parts(later({ rows, ...JULY }))).toEqual({ ...NOTHING, assessed: { checkedAgain: 1 } });
  });

  test("children grew: on August 10 they turn nine months old", () => {
    const after = later({ settings: { asOf: "2024-08-10", recheckDays: 365 } });
    const before = { ...EARLIER, settings: { ...EARLIER.settings, recheckDays: 365 } };
    expect(parts(after, BAND, before)).toEqual({
      children: { grewOut: -3 },
      assessed: { grewOut: -2 },
      met: { grewOut: -1 },
    });
    expect(parts(after, "9 to <12 months", before)).toEqual({
      children: { grewIn: 3 },
      assessed: { grewIn: 2 },
      met: { grewIn: 1 },
    });
  });

  test("a child that moved to another site left the one and joined the other", () => {
    const [a, ...others] = CHILDREN as [(typeof CHILDREN)[number], ...typeof CHILDREN];
    const moved = [{ ...a, left: "2024-07-10" }, { ...a, site: "South", enrolled: "2024-07-10" }, ...others];
    const by = { by: ["Site"] };
    const before = { ...EARLIER, settings: { ...EARLIER.settings, ...by } };
    const found = changesOf(before, later({ rows: { children: moved }, settings: { ...JULY.settings, ...by } })).cells;
    const children = found.filter((each) => each.skill === "sits" && each.measure === "children");
    expect(
      children.map(({ group, parts: all }) => [group, all[PARTS.indexOf("joined")], all[PARTS.indexOf("left")]]),
    ).toEqual([
      [["North"], 0, -1],
      [["South"], 1, 0],
    ]);
  });
});

test("a child that did two things at one step counts under the first of the order", () => {
  const [a, ...others] = CHILDREN as [(typeof CHILDREN)[number], ...typeof CHILDREN];
  const rows = {
    children: [{ ...a, birth: "2023-08-10" }, ...others],
    observations: [...CHECKS.slice(1), look("A", "2024-05-01", "not met"), look("A", "2024-05-02", "not met")],
  };
  expect(parts(later({ rows }))).toEqual({
    children: { corrected: -1 },
    assessed: { enteredLate: -1 },
    met: { enteredLate: -1 },
  });
});

test("a skill that another one replaces: what moved it were the checks of that other one", () => {
  const skills = [skill("sits"), skill("stands", { follows: "sits" })];
  const lost = [...CHECKS, look("A", "2024-06-01", "lost")];
  const before = { ...EARLIER, skills, observations: lost };
  const after = { ...before, observations: [...lost, { ...look("A", "2024-06-02", "met"), skill: "stands" }] };
  expect(parts(after, BAND, before)).toEqual({ ...NOTHING, met: { enteredLate: 1 } });
});

test("over all ages, who only grew is no change, and who grew and met it has met it", () => {
  const settings = { asOf: "2024-08-10", recheckDays: 365 };
  const before = { ...EARLIER, settings: { ...EARLIER.settings, recheckDays: 365 } };
  const rows = { observations: [...CHECKS, look("B", "2024-08-01", "met")] };
  expect(bridgesOf(changesOf(before, later({ rows, settings }))).map(bridgeInWords)).toEqual([
    "3 children in the program, as before",
    "2 up-to-date skill checks, as before",
    "1 skill checks met became 2: 1 met since",
    "1 skill checks met in gross motor became 2: 1 met since",
  ]);
});
