import { parseDecisions } from "../../src/records/corrections/decisions";
import { listed, OBSERVATIONS, read, SKILLS } from "./book";

const messages = (json: unknown) => {
  const parsed = parseDecisions(json);
  return "messages" in parsed ? parsed.messages : [];
};

test("a file holds a list, or an object with one", () => {
  const list = [{ kind: "same-child", child: "A1", alias: "A-1", revoked: false }];
  expect(parseDecisions(list)).toEqual({ decisions: list });
  expect(parseDecisions({ decisions: list })).toEqual({ decisions: list });
  expect(parseDecisions([])).toEqual({ decisions: [] });
});

test.each([
  [null, /^Corrections: the file must have a list/],
  ["[]", /^Corrections: the file must have a list/],
  [
    [{ kind: "guess" }],
    /^Correction 1: kind must be one of same-child, skill-alias, date-order, heading, two-digit-years, sheet, word, area, name and skill\.$/,
  ],
  [[{ kind: "same-child", child: "A1" }], /^Correction 1: alias must be text\.$/],
  [[{ kind: "same-child", child: "A1", alias: " " }], /^Correction 1: alias must not be blank\.$/],
  [
    [{ kind: "date-order", table: "Signs", column: "Date", order: "up" }],
    /^Correction 1: order must be day first, month first or year first\.$/,
  ],
  [[{ kind: "heading", table: "Staff", heading: "a", means: "b" }], /^Correction 1: table must be one of/],
  [
    [
      { kind: "skill-alias", skill: "sits", alias: "x" },
      { kind: "skill-alias", skill: "walks", alias: "X " },
    ],
    /^Correction 2: it says otherwise than correction 1\. Revoke one of the two\.$/,
  ],
])("%j is refused in a sentence", (json, message) => {
  expect(messages(json)).toHaveLength(1);
  expect(messages(json)[0]).toMatch(message);
});

describe("corrections that lead back to where they began", () => {
  const child = (alias: string, is: string, revoked = false) => ({ kind: "same-child", child: is, alias, revoked });
  const skill = (alias: string, is: string) => ({ kind: "skill-alias", skill: is, alias });
  const back = (...numbers: number[]) =>
    numbers.map((n) => `Correction ${n}: it leads back to its own alias. Revoke one correction of the circle.`);

  test.each([
    ["one of an id to itself", [child("A", "a ")], back(1)],
    ["two", [child("A", "B"), child("B", "A")], back(1, 2)],
    [
      "three, and one that leads into them",
      [child("D", "A"), child("A", "B"), child("B", "C"), child("C", "A")],
      back(2, 3, 4),
    ],
    ["two skills", [skill("walks", "strolls"), skill("strolls", "walks")], back(1, 2)],
    ["a chain without a circle", [child("A", "B"), child("B", "C"), child("C", "D")], []],
    ["a circle that a revoked correction opened", [child("A", "B"), child("B", "C"), child("C", "A", true)], []],
    ["a child and a skill of the same names", [child("A", "B"), skill("B", "A")], []],
  ])("%s", (_, decisions, said) => expect(messages(decisions)).toEqual(said));
});

test("a revoked decision contradicts nothing", () => {
  expect(
    messages([
      { kind: "skill-alias", skill: "sits", alias: "x", revoked: true },
      { kind: "skill-alias", skill: "walks", alias: "x" },
    ]),
  ).toEqual([]);
});

test("aliases are followed through each other, and a circle of them ends", () => {
  const rows = OBSERVATIONS.map((row, i) => (i === 4 ? ["third", ...row.slice(1)] : row));
  const chain = [
    { kind: "same-child", child: "second", alias: "third" },
    { kind: "same-child", child: "A3", alias: "Second" },
  ] as const;
  expect(read({ observations: rows }, {}, [...chain]).observations.child[3]).toBe(2);
  const circle = [chain[0], { kind: "same-child", child: "third", alias: "second" }] as const;
  expect(listed(read({ observations: rows }, {}, [...circle]))).toContain("child-unknown A5");
});

test("an alias of a skill is read everywhere a skill is named", () => {
  const looks = OBSERVATIONS.map((row, i) => (i === 4 ? [row[0], "strolls", ...row.slice(2)] : row));
  const skills = SKILLS.map((row, i) => (i === 3 ? [...row.slice(0, 7), "creeps", ...row.slice(8)] : row));
  const decisions = [
    { kind: "skill-alias", skill: "walks", alias: "Strolls" },
    { kind: "skill-alias", skill: "crawls", alias: "creeps" },
  ] as const;
  const records = read({ observations: looks, skills }, {}, [...decisions]);
  expect(records.observations.skill[3]).toBe(2);
  expect(records.skills[2]?.follows).toBe(1);
  expect(records.decisions).toEqual([
    "Another way of writing is read as the skill walks (correction 1).",
    "Another way of writing is read as the skill crawls (correction 2).",
  ]);
});

test("the order of the dates of one column, and of no other", () => {
  const looks = OBSERVATIONS.map((row, i) =>
    i === 0 ? row : [...row.slice(0, 2), "04/05/2025", row[3], null, "06/05/2025"],
  );
  const records = read({ observations: looks }, {}, [
    { kind: "date-order", table: "Observations", column: "Date", order: "month first" },
  ]);
  expect(listed(records).filter((each) => each.startsWith("cell-not-read"))).toEqual(
    [2, 3, 4, 5].map((row) => `cell-not-read F${row}`),
  );
  expect(records.observations.day).toHaveLength(4);
});
