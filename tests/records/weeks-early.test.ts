import { book, CHILDREN, OBSERVATIONS, read, SKILLS, sheet } from "./book";

/** The due date is day 280. Source: ACOG Committee Opinion 700 (2017). */
test("zero weeks early is a birth on the due date, and a blank is not recorded", () => {
  const weeks = ["Weeks early", 0, null, 8];
  const rows = CHILDREN.map((row, at) => row.map((cell, column) => (column === 2 ? weeks[at] : cell)));
  const records = read(book([sheet("Children", rows), sheet("Observations", OBSERVATIONS), sheet("Skills", SKILLS)]));
  expect([...records.children.gestationDays]).toEqual([280, 0, 224]);
  expect(records.counts.gestationNotRecorded).toBe(1);
});
