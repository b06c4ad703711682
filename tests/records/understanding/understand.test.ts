import { applyChoice } from "../../../src/records/understanding/choices";
import { decisionsOf, fromFile, toFile } from "../../../src/records/understanding/file";
import { openQuestions } from "../../../src/records/understanding/understanding";
import { understand } from "../../../src/records/understanding/understand";
import { book, bookWith, read, sheet } from "../book";

const wide = (top: number, left: number, right: number) => ({ top, bottom: top, left, right });

const KIDS = sheet("Kids 25-26", [
  ["Bright Steps - active list"],
  [],
  ["Kid #", "DOB", "Wks early", "Clinic", "Worker", "Intake", "Exit", "Why left", "Phone"],
  ["K-01", "2024-03-01", 6, "Mill St", "Ana", "2024-06-01", null, "moved away to be near family", "555-0101"],
  ["K-02", "2024-04-01", null, "Mill Street", "Ana", "2024-07-01", "2025-06-01", null, "555-0102"],
  ["K-03", "2024-05-01", null, "Mill Street", "Bo", "2024-08-01", null, null, "555-0103"],
  ["K-04", "2024-05-09", null, "eastside", "Bo", "2024-08-01", null, null, "555-0104"],
  ["K04", "2024-05-09", null, "Eastside", "Bo", "2024-08-01", null, null, "555-0105"],
  ["Total children 5", null, null, null, null, null, 1],
]);

const MOTOR = sheet(
  "Motor",
  [
    ["", "", "Gross motor", "", "Fine motor", ""],
    ["Kid #", "Visit", "Rolls over", "Sits alone", "Picks up a pea", "Stacks blocks"],
    ["K-01", "2024-09-01", "Y", "N", "E", "Y"],
    ["K-02", "2024-09-02", "Y", "E", "E", "N"],
    ["K-03", "2024-09-03", "N", "N", "Y", "NA"],
    ["K-04", "2024-09-03", "N", "N", "Y", "NA"],
    ["Total", null, 2, 0, 2, 1],
  ],
  { merged: [wide(0, 2, 3), wide(0, 4, 5)] },
);

const WORKBOOK = book([sheet("Cover", [["Bright Steps"], ["Quarter 3"]]), KIDS, MOTOR]);
const UNDERSTOOD = understand(WORKBOOK);

test("each sheet is taken for what it is, and what is only guessed is marked", () => {
  expect(UNDERSTOOD.sheets.map(({ sheet: name, is, doubtful }) => [name, is, doubtful])).toEqual([
    ["Cover", "not used", false],
    ["Kids 25-26", "children", true],
    ["Motor", "grid", true],
  ]);
  const [, kids] = UNDERSTOOD.sheets;
  expect(kids?.headings.map(({ heading, means }) => [heading, means])).toEqual([
    ["Kid #", "Child"],
    ["DOB", "Birth date"],
    ["Wks early", "Weeks early"],
    ["Clinic", "Site"],
    ["Worker", "Therapist"],
    ["Intake", "Enrolled"],
    ["Exit", "Left"],
    ["Why left", "Group"],
    ["Phone", null],
  ]);
});

test("a word that nothing explains is asked with its count, and an area is read from the heading above", () => {
  expect(UNDERSTOOD.words.map(({ word, cells, means }) => [word, cells, means])).toEqual([
    ["E", 3, null],
    ["NA", 2, null],
  ]);
  expect(UNDERSTOOD.skills.map(({ skill, area }) => [skill, area])).toEqual([
    ["Rolls over", "gross motor"],
    ["Sits alone", "gross motor"],
    ["Picks up a pea", "fine motor"],
    ["Stacks blocks", "fine motor"],
  ]);
});

test("variants of a site and one child twice are offered, and nothing is joined unasked", () => {
  expect(UNDERSTOOD.names).toEqual([
    { column: "Site", spelling: "Mill St", cells: 1, means: "Mill Street", likely: "Mill Street", doubtful: true },
  ]);
  expect(UNDERSTOOD.sameChild).toEqual([
    {
      first: "Kids 25-26!A7",
      second: "Kids 25-26!A8",
      why: "The two ids differ only by zeros, hyphens or spaces.",
    },
  ]);
});

test("confirmed and kept as a file, it is read in the same way", () => {
  const confirmed = applyChoice(UNDERSTOOD, { kind: "confirm" });
  const settled = applyChoice(applyChoice(confirmed, { kind: "word", word: "E", means: "emerging" }), {
    kind: "word",
    word: "NA",
    means: "leave out",
  });
  expect(openQuestions(settled)).toEqual({ doubtful: 0, unsettled: 0 });
  const file = fromFile(JSON.parse(JSON.stringify(toFile(settled))) as unknown);
  if ("messages" in file) throw new Error(file.messages.join(" "));
  const records = read(WORKBOOK, {}, [...file.decisions]);
  // By hand: 4 children by 4 skills, two cells NA.
  expect(records.input.map(({ table, rows, used }) => [table, rows, used])).toEqual([
    ["Children", 6, 5],
    ["Observations", 16, 14],
  ]);
  // 40 weeks less 6 weeks.
  expect([...records.children.gestationDays]).toEqual([34 * 7, 0, 0, 0, 0]);
  expect(records.enrolments.columns.find(({ heading }) => heading === "Site")?.values).toEqual([
    "Mill Street",
    "Mill Street",
    "Mill Street",
    "eastside",
    "eastside",
  ]);
  const again = understand(WORKBOOK, file);
  expect(openQuestions(again)).toEqual({ doubtful: 0, unsettled: 0 });
  expect(again.changes).toEqual([]);
  expect(decisionsOf(again)).toEqual(decisionsOf(settled));
});

test("a key that nobody knows is refused by its name", () => {
  const file = { ...toFile(UNDERSTOOD), colour: "blue" };
  expect(fromFile(file)).toEqual({
    messages: ['The file: "colour" is not a key of an understanding file. Remove it, or correct its spelling.'],
  });
  const [first, ...rest] = toFile(UNDERSTOOD).sheets as object[];
  expect(fromFile({ windowline: 1, sheets: [{ ...first, tint: 1 }, ...rest] })).toEqual({
    messages: ['sheets 1: "tint" is not a key of an understanding file. Remove it, or correct its spelling.'],
  });
});

test("no cell of a child is in the understanding but spellings that are offered", () => {
  const text = JSON.stringify(UNDERSTOOD);
  for (const never of ["K-01", "K04", "moved away", "555-", "Ana", "2024"]) expect(text).not.toContain(never);
});

test("a rare word is asked where it can name nobody, and what is not shown is counted", () => {
  const { words, resultsNotShown } = understand(
    bookWith({
      observations: [
        ["Child", "Skill", "Date", "Result"],
        ["A1", "sits", "2024-10-02", "Y"],
        ["A1", "sits", "2024-11-02", "Y?"],
        ["A1", "walks", "2024-11-02", "?"],
        ["A2", "walks", "2025-11-02", "Rosa"],
        ["A2", "sits", "2025-11-02", "asleep, try again"],
      ],
    }),
  );
  expect(words.map(({ word, cells, means }) => [word, cells, means])).toEqual([
    ["Y?", 1, null],
    ["?", 1, null],
  ]);
  expect(resultsNotShown).toBe(2);
});
