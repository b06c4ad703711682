import { expectedByNow } from "../../src/tables/expected-by-now";
import { asWorkbook } from "../oracle/as-workbook";
import { child, look, program, skill } from "../oracle/programs";
import type { ObservationRow } from "../oracle/input";
import { contextFrom, entriesOf, rowsOf } from "./referrals-book";

/** On 30 June 2024 a child born on 30 June 2023 is 12 months old. */
const SKILLS = [
  skill("sits", { opens: 4, closes: 9, expectedShare: 0.99 }),
  skill("crawls", { opens: 5, closes: 12, expectedShare: 0.99 }),
  skill("stands", { opens: null, closes: 11, expectedShare: 0.75 }),
  skill("walks", { opens: 8, closes: 18, expectedShare: 0.99, follows: "crawls" }),
  skill("babbles", { area: "speech", opens: null, closes: 9, expectedShare: 0.75 }),
];
const at = (id: string, which: string, date: string, result: ObservationRow["result"]) =>
  look(id, date, result, { skill: which });

function rowsFor(observations: readonly ObservationRow[], births: Readonly<Record<string, string>>) {
  const children = Object.entries(births).map(([id, birth]) => child(id, birth));
  const input = program(children, observations, { skills: SKILLS });
  const rows = rowsOf(expectedByNow(contextFrom(asWorkbook(input), entriesOf(input))));
  return (wanted: string, kind?: string) =>
    rows.find(
      (row) =>
        (row.skill === wanted || (row.skill === "all" && row.area === wanted)) && (kind ?? row.kind) === row.kind,
    );
}

describe("by hand: five children of 12 months, one of 11, one of 3", () => {
  const yearOld = Object.fromEntries(["A", "B", "C", "D", "E"].map((id) => [id, "2023-06-30"]));
  const row = rowsFor(
    [
      at("A", "sits", "2024-01-10", "met"),
      at("A", "crawls", "2024-06-01", "not met"),
      at("A", "walks", "2024-06-20", "met"), // has replaced crawling
      at("B", "sits", "2024-06-01", "not met"),
      at("B", "crawls", "2024-06-01", "not met"),
      at("C", "sits", "2024-02-01", "emerging"), // 150 days ago
      at("C", "crawls", "2024-06-01", "not met"),
      at("D", "sits", "2024-01-01", "met"),
      at("D", "sits", "2024-06-10", "lost"),
      at("D", "crawls", "2024-05-01", "met"),
      at("E", "babbles", "2024-06-01", "met"),
    ],
    { ...yearOld, F: "2023-07-30", G: "2024-03-30" },
  );

  test("sits, closes at 9: 1 before, 0 within, 6 past: 1 met, 1 not yet, 1 lost, 1 to recheck, 2 not checked; 1 of 3", () => {
    expect(row("sits")).toMatchObject({
      ...{ kind: "0.99", children: 7, beforeWindow: 1, inWindow: 0, pastWindow: 6 },
      ...{ met: 1, notMet: 1, lost: 1, needsRecheck: 1, notChecked: 2, checked: 3, shareMet: 1 / 3 },
      ...{ expectedShare: 0.99, childrenAllMet: null, childrenNotKnown: null },
    });
  });

  test("crawls, closes at 12: F is within at 11 months, A counts as met since A walks; 2 of 4", () => {
    expect(row("crawls")).toMatchObject({
      ...{ beforeWindow: 1, inWindow: 1, pastWindow: 5 },
      ...{ met: 2, notMet: 2, lost: 0, needsRecheck: 0, notChecked: 1, checked: 4, shareMet: 1 / 2 },
    });
  });

  test("stands, without an opening: nobody is before the window; past it nobody was checked", () => {
    expect(row("stands")).toMatchObject({ beforeWindow: 0, inWindow: 1, pastWindow: 6, notChecked: 6, shareMet: null });
  });

  test("gross motor past 0.99: A all met, B two missing, C one to recheck, D one lost, E and F not checked; kinds apart", () => {
    expect(row("gross motor", "0.99")).toMatchObject({
      ...{ skill: "all", children: 21, pastWindow: 11, met: 3, notMet: 3, lost: 1, needsRecheck: 1, notChecked: 3 },
      ...{ checked: 7, shareMet: 3 / 7, lower: null, upper: null },
      ...{ childrenAllMet: 1, childrenOneMissing: 1, childrenMoreMissing: 1, childrenNotKnown: 3 },
    });
    expect(row("gross motor", "0.75")).toMatchObject({ pastWindow: 6, childrenNotKnown: 6 });
  });

  test("speech past 0.75: E has met the one skill expected; the child of 3 months, of whom nothing is expected, is in none", () => {
    expect(row("speech", "0.75")).toMatchObject({ childrenAllMet: 1, childrenNotKnown: 5, childrenOneMissing: 0 });
  });
});

test("two missing come before not known, one missing after it", () => {
  const row = rowsFor(
    [
      at("A", "sits", "2024-06-01", "not met"),
      at("A", "crawls", "2024-06-01", "not met"),
      at("B", "sits", "2024-06-01", "not met"),
      at("B", "crawls", "2024-06-01", "not met"),
      at("B", "walks", "2024-06-01", "not met"),
      at("C", "sits", "2024-06-01", "not met"),
      at("C", "crawls", "2024-06-01", "met"),
      at("C", "walks", "2024-06-01", "met"),
    ],
    { A: "2022-06-30", B: "2022-06-30", C: "2022-06-30" },
  );
  // A: walking was never checked, and yet two are missing
  expect(row("gross motor", "0.99")).toMatchObject({
    ...{ childrenMoreMissing: 2, childrenOneMissing: 1, childrenNotKnown: 0, childrenAllMet: 0 },
  });
});
