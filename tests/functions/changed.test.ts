/** CHANGED against the second implementation of what-changed (tests/oracle), and by hand. */
import fc from "fast-check";
import type { OracleInput } from "../oracle/input";
import { child, look, program } from "../oracle/programs";
import { pairArbitrary } from "../oracle/random-pair";
import { type PARTS, whatChanged } from "../oracle/what-changed";
import { answerOf, rowsOf } from "./call";
import { argumentsOf, asRows } from "./ranges";

type Rows = readonly (readonly unknown[])[];
const TOLD: readonly (readonly [heading: string, part: (typeof PARTS)[number]])[] = [
  ["Corrected", "corrected"],
  ["Definition", "definition"],
  ["Joined", "joined"],
  ["Left", "left"],
  ["Grew into the group", "grewIn"],
  ["Grew out of the group", "grewOut"],
  ["Met since", "metSince"],
  ["Lost", "lost"],
  ["Needs a recheck", "needsRecheck"],
  ["Checked again", "checkedAgain"],
];

function statusOf(input: OracleInput): Rows | null {
  const { tables, asOf, settings } = argumentsOf(input);
  const answer = answerOf("SKILLSTATUS", ...tables, asOf, settings);
  return "result" in answer ? answer.result : null;
}

test("two days of one workbook: what the second implementation says, cell by cell", () => {
  fc.assert(
    fc.property(pairArbitrary(), ({ later }) => {
      const now = { ...later, settings: { ...later.settings, by: [], from: null } };
      const days = [100, 31, 0].map((before) => Date.parse(later.settings.asOf) - before * 86_400_000);
      for (const day of days) {
        const then = { ...now, settings: { ...now.settings, asOf: new Date(day).toISOString().slice(0, 10) } };
        const [before, after] = [statusOf(then), statusOf(now)];
        if (before === null || after === null) continue;
        const ours = asRows(rowsOf("CHANGED", before, after, now.settings.edges.join(", ")));
        const theirs = whatChanged(then, now);
        expect(new Map(ours.map((row) => [keyIn(row), row]))).toEqual(
          new Map(theirs.map((row) => [row.key, expect.objectContaining(headed(row))])),
        );
      }
    }),
    { numRuns: 40 },
  );
});

function keyIn(row: Record<string, unknown>): string {
  return ["", row.Skill, row.Area, row["Age group"], row.Count].join(" | ");
}

function headed(row: ReturnType<typeof whatChanged>[number]): Record<string, number> {
  const parts = TOLD.map(([heading, part]) => [heading, row[part]] as const);
  return { Earlier: row.earlier, ...Object.fromEntries(parts), Later: row.later };
}

const CHILDREN = ["A", "B", "C"].map((id) => child(id, "2023-11-10", { enrolled: "2024-01-10" }));
const CHECKS = [look("A", "2024-05-01", "met"), look("B", "2024-05-01", "not met"), look("B", "2024-07-20", "met")];

function counted(earlier: Rows, later: Rows): Record<string, unknown> {
  const rows = asRows(rowsOf("CHANGED", earlier, later)).filter((row) => row.Skill === "sits");
  const plain = ({ Count, Skill: _s, Area: _a, "Age group": _g, ...counts }: Record<string, unknown>) => [
    Count,
    Object.fromEntries(Object.entries(counts).filter(([, count]) => count !== 0)),
  ];
  return Object.fromEntries(rows.map(plain)) as Record<string, unknown>;
}

describe("by hand", () => {
  const settings = { asOf: "2024-06-30" };
  const came = child("D", "2023-11-10", { enrolled: "2024-07-15" });
  const gone = { ...CHILDREN[0]!, left: "2024-07-10" };
  const [then, now] = ["2024-06-30", "2024-07-31"].map((asOf) =>
    statusOf(program([gone, ...CHILDREN.slice(1), came], CHECKS, { settings: { ...settings, asOf } })),
  ) as [Rows, Rows];

  test("one left, one joined, one met it", () => {
    expect(counted(then, now)).toEqual({
      children: { Earlier: 3, Joined: 1, Left: -1, Later: 3 },
      assessed: { Earlier: 2, Left: -1, Later: 1 },
      met: { Earlier: 1, Left: -1, "Met since": 1, Later: 1 },
    });
  });

  test("blank rows, a number as id, and the headings of the sheet of a report", () => {
    const sheet = then.map((row, at) => (at === 0 ? row.map((cell) => (cell === "Age (months)" ? "Age" : cell)) : row));
    const blank = then[0]!.map(() => null);
    expect(counted([...sheet, blank], now)).toEqual(counted(then, now));
    expect(counted(numbered(then, 7), numbered(now, "7"))).toEqual(counted(then, now));
  });

  test("an age that fell is a correction, a skill on one day alone a definition", () => {
    const [head, row] = then as [unknown[], unknown[]];
    const younger = row.with(3, 3.2);
    const rows = asRows(rowsOf("CHANGED", [head, row], [head, younger]));
    expect(
      rows.filter((each) => each.Skill === "sits" && each.Count === "children").map((each) => each.Corrected),
    ).toEqual([1, -1]);
    const other = asRows(rowsOf("CHANGED", [head, row], [head, row, row.with(1, "stands")]));
    expect(other.filter((each) => each.Skill === "stands").map((each) => each.Definition)).toEqual([1, 1, 1]);
  });

  test.each([
    [
      [then.map((row) => row.slice(0, 5)), now],
      "earlier has no column Box: give what SKILLSTATUS spills, with its headings.",
    ],
    [
      [then, [...now, now[1]]],
      `Row ${now.length + 1}: later has this child and skill twice: give the status of one day.`,
    ],
    [[then, [now[0], now[1]!.with(5, "gone")]], /^Row 2: later: Box must be one of had at first look, /],
    [[then, [now[0], now[1]!.with(3, null)]], "Row 2: Age (months) is empty: give a number."],
    [[then, now, "6, 3"], "edges must rise, such as 0, 6, 12."],
  ])("bad ranges are refused (%#)", (args, message) => {
    expect(answerOf("CHANGED", ...args)).toEqual({
      error: "#VALUE!",
      message: typeof message === "string" ? message : expect.stringMatching(message),
    });
  });
});

function numbered(rows: Rows, id: unknown): Rows {
  return rows.map((row) => row.map((cell, at) => (at === 0 && cell === "B" ? id : cell)));
}
