import { ratings } from "../../src/tables/ratings";
import { child, program } from "../oracle/programs";
import type { ChildRow } from "../oracle/input";
import { contextFrom, entriesOf, rowsOf, workbookWith } from "./referrals-book";

const HEADINGS = ["Child", "Outcome", "Entry date", "Entry level", "Exit date", "Exit level", "Gained any skill"];
const SETTINGS = { asOf: "2024-06-30", from: "2024-04-01" };

type Rated = readonly [
  child: string,
  entry: number | null,
  exit: number | null,
  isNew: string | null,
  exitDay?: string,
];

function tableOf(children: readonly ChildRow[], rows: readonly Rated[], scale: Record<string, number> = {}) {
  const input = program(children, [], { settings: SETTINGS });
  const cells = rows.map(([id, entry, exit, isNew, day]) => [
    ...[id, "Talking", "2023-01-10", entry],
    ...[exit === null ? null : (day ?? "2024-05-01"), exit, isNew],
  ]);
  return ratings(
    contextFrom(workbookWith(input, { Ratings: [HEADINGS, ...cells] }), { ...entriesOf(input), ...scale }),
  );
}

const stayed = (id: string, enrolled: string, left: string | null) => child(id, "2022-01-01", { enrolled, left });

/** November 1, 2023 to April 30, 2024: 30 + 31 + 31 + 29 + 31 + 30 = 182 days. */
describe("who counts", () => {
  const rated: Rated = ["A", 3, 4, "yes"];
  const coverageOf = (children: readonly ChildRow[], rows: readonly Rated[]) => rowsOf(tableOf(children, rows))[0];

  test("182 days of service do, 181 do not", () => {
    expect(coverageOf([stayed("A", "2023-11-01", "2024-05-01")], [rated])).toMatchObject({ c: 1, coverage: 1 });
    expect(coverageOf([stayed("A", "2023-11-02", "2024-05-01")], [rated])).toMatchObject({ c: 0, coverage: null });
  });

  test("days of two enrolments add up, a gap does not count", () => {
    const gap = [stayed("A", "2023-09-01", "2023-10-01"), stayed("A", "2023-12-01", "2024-05-01")];
    expect(coverageOf(gap, [rated])).toMatchObject({ c: 1 });
    expect(coverageOf([stayed("A", "2023-09-10", "2023-10-01"), gap[1]!], [rated])).toMatchObject({ c: 0 });
  });

  test("a child who left before the period, or is still followed, does not; a note counts their exit ratings", () => {
    const table = tableOf(
      [
        stayed("A", "2023-01-01", "2024-03-31"),
        stayed("B", "2023-01-01", null),
        stayed("C", "2023-01-01", "2024-04-01"),
      ],
      [rated, ["B", 3, 4, "yes"], ["C", 2, 5, "yes", "2024-03-20"]],
    );
    expect(rowsOf(table)[0]).toMatchObject({ a: 0, b: 0, c: 0, d: 1, e: 0, coverage: 1 });
    expect(table.notes.join(" ")).toContain("or had less service: 2.");
  });
});

describe("by hand", () => {
  const ids = ["A", "B", "C", "D", "E", "F", "G", "H"];
  const children = ids.map((id) => stayed(id, "2023-01-01", "2024-05-01"));
  const table = tableOf(children, [
    ["A", 3, 2, "no"],
    ["B", 3, 3, null],
    ["C", 3, 4, "yes"],
    ["D", 3, 5, "yes"],
    ["E", 5, 5, "no"],
    ["F", 4, null, null],
    ["G", 4, 3, null],
  ]);
  const rows = rowsOf(table);

  test("a note says the same numbers", () => {
    expect(table.notes.join(" ")).toContain("Talking: 6 rated of 8 who left after six months");
  });

  test("one child a category, G between a and b for want of an answer, F without exit level in none: 6 of 8", () => {
    for (const row of rows) {
      expect(row).toMatchObject({ outcome: "Talking", a: 1, b: 1, aOrB: 1, c: 1, d: 1, e: 1, coverage: 6 / 8 });
    }
  });

  test("statement 1: (c + d) / (a + b + a or b + c + d) = 2 of 5; statement 2: (d + e) of all = 2 of 6", () => {
    expect(rows.map(({ statement, count, of, percent }) => [statement, count, of, percent])).toEqual([
      [1, 2, 5, 40],
      [2, 2, 6, 200 / 6],
    ]);
  });

  test("answering G moves it from a or b, and no statement", () => {
    const answered = rowsOf(
      tableOf(children, [
        ["A", 3, 2, "no"],
        ["B", 3, 3, null],
        ["C", 3, 4, "yes"],
        ["D", 3, 5, "yes"],
        ["E", 5, 5, "no"],
        ["G", 4, 3, "no"],
      ]),
    );
    expect(answered[0]).toMatchObject({ a: 2, aOrB: 0 });
    const statements = (from: typeof rows) => from.map(({ count, of }) => [count, of]);
    expect(statements(answered)).toEqual(statements(rows));
  });

  test("on a scale of seven with peers from 6 on, by settings", () => {
    const scale = { ratingLevels: 7, peerLevel: 6 };
    const seven = rowsOf(
      tableOf(
        children,
        [
          ["A", 3, 6, "yes"],
          ["B", 7, 6, "no"],
          ["C", 5, 5, "no"],
        ],
        scale,
      ),
    );
    expect(seven[0]).toMatchObject({ b: 1, d: 1, e: 1, coverage: 3 / 8 });
  });

  test("of two rated rows the one with the later exit counts, wherever it stands", () => {
    const [one] = [stayed("A", "2023-01-01", "2024-05-01")];
    const later: Rated = ["A", 3, 5, "yes", "2024-04-20"];
    const earlier: Rated = ["A", 3, 4, "yes", "2024-04-10"];
    for (const both of [
      [later, earlier],
      [earlier, later],
    ]) {
      expect(rowsOf(tableOf([one!], both))[0]).toMatchObject({ c: 0, d: 1, coverage: 1 });
    }
  });
});
