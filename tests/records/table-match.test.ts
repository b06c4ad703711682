import { bestSpec } from "../../src/records/headings/table-match";
import type { HeaderCell } from "../../src/records/headings/headings";
import { headingKey } from "../../src/records/cells/words";

const match = (...headings: string[]) => {
  const cells = headings.map((text, column): HeaderCell => ({ row: 0, column, text, keys: [headingKey(text)] }));
  return bestSpec(cells, new Map())?.spec.name ?? null;
};

/** Children needs two headings, Observations four: who wrote all four wrote checks, with the birth date repeated beside them. */
test("headings that fit two tables are of the one that needs more of them", () => {
  expect(match("Child", "Birth date")).toBe("Children");
  expect(match("Child", "Birth date", "Skill", "Date", "Result")).toBe("Observations");
  expect(match("Result", "Date", "Skill", "Birth date", "Child")).toBe("Observations");
});

/** Observations and Signs both need four. */
test("where both need as many, they are of the one that has more of its headings", () => {
  const both = ["Child", "Date", "Skill", "Result", "Sign", "Seen"];
  expect(match(...both, "Observer", "Entered")).toBe("Observations");
  expect(match(...both, "Action", "Action date")).toBe("Signs");
});

test("a table of skills has no column of children", () => {
  expect(match("Skill", "Area", "Closes")).toBe("Skills");
  expect(match("Skill", "Area", "Closes", "Child")).toBeNull();
});
