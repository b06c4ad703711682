import { applyChoice } from "../../../src/records/understanding/choices";
import { fromFile, toFile } from "../../../src/records/understanding/file";
import { contentShown } from "../../../src/records/understanding/understanding";
import { understand } from "../../../src/records/understanding/understand";
import { bookWith, read, sheet } from "../book";

const means = (rows: readonly (readonly unknown[])[], name = "Sent out") =>
  understand(bookWith({ more: [sheet(name, rows)] }))
    .sheets.find((each) => each.sheet === name)
    ?.headings.map((each) => [each.heading, each.means]);

test("everyday headings of referrals are known", () => {
  const headings = ["Child", "Sent", "Area", "Why", "To whom", "Heard back", "Eval", "Plan"];
  const row = ["A1", "2025-01-10", "speech", "few words at two", "County", "2025-01-12", "2025-02-01", "2025-02-20"];
  expect(means([headings, row])).toEqual([
    ["Child", "Child"],
    ["Sent", "Referred"],
    ["Area", "Area"],
    ["Why", "Reason"],
    ["To whom", "To"],
    ["Heard back", "Received"],
    ["Eval", "Evaluated"],
    ["Plan", "Plan"],
  ]);
});

test("where no heading names the area, the one that says why is offered for it", () => {
  const rows = ["2025-01-10", "2025-02-10", "2025-03-10", "2025-04-10"].map((day) => ["A1", day, "talking", "County"]);
  const seen = understand(bookWith({ more: [sheet("Out", [["Child", "Sent", "Why", "To whom"], ...rows])] }));
  const why = seen.sheets.find((each) => each.sheet === "Out")?.headings.find(({ heading }) => heading === "Why");
  expect([why?.means, why?.doubtful]).toEqual(["Area", true]);
  expect(seen.areas.map(({ word, means: area }) => [word, area])).toEqual([["talking", "speech"]]);
});

test("weeks early are numbers, and never a skill or scores", () => {
  const own = [4, 0, 2, 2, 4, 0].map((weeks, i) => [`A${i + 1}`, "2025-02-01", weeks, i % 2 ? "Y" : "N"]);
  const grid = means([["Child", "Date", "Weeks early", "sits"], ...own], "Grid");
  expect(grid?.find(([heading]) => heading === "Weeks early")).toEqual(["Weeks early", null]);
  const roster = [4, 0, 2, 2, 4, 0].map((weeks, i) => [`B${i}`, "2025-02-01", weeks]);
  const { sheets } = understand(bookWith({ children: [["Child", "Birth date", "Weeks early"], ...roster] }));
  const weeks = sheets[0]?.headings.find(({ heading }) => heading === "Weeks early");
  expect(weeks && [weeks.means, contentShown(weeks)]).toEqual(["Weeks early", "numbers"]);
});

test("what a person settled is said in the report, without a name of a site or of staff", () => {
  const given = bookWith({
    children: [
      ["Kid", "DOB", "Clinic"],
      ["A1", "2024-03-31", "Mill St"],
      ["A2", "2024-05-15", "Mill Street"],
      ["A3", "2025-01-20", "Mill Street"],
    ],
    observations: [
      ["Child", "Skill", "Date", "Result"],
      ["A1", "sits", "2024-10-02", "E"],
      ["A1", "sits", "2024-11-02", "E"],
    ],
  });
  const confirmed = applyChoice(understand(given), { kind: "confirm" });
  const file = fromFile(
    JSON.parse(JSON.stringify(toFile(applyChoice(confirmed, { kind: "word", word: "E", means: "emerging" })))),
  );
  if ("messages" in file) throw new Error(file.messages.join(" "));
  const { decisions } = read(given, {}, [...file.decisions]);
  expect(decisions).toEqual([
    "The sheet “Kids” is read as children: “Kid” is Child, “DOB” is Birth date and “Clinic” is Site.",
    "The sheet “Looks” is read as observations.",
    "The sheet “List” is read as skills.",
    "Results written “E” are read as emerging.",
    "1 spelling of Site is read as another one.",
  ]);
  expect(read(bookWith({})).decisions).toEqual([]);
});

test.each([
  [
    { means: "Born when", is: "children" },
    /^sheets 1, headings 1: "Born when" is no column of children\. Write one of Child, Birth date, .*Group, or null for not used\.$/,
  ],
  [
    { means: "Result", is: "grid" },
    /^sheets 1, headings 1: "Result" is no column of grid\. Write one of Child, Date, or null for not used\.$/,
  ],
  [{ means: "Child", is: "kids" }, /^sheets 1: is must be one of children, observations, grid, .*not used\.$/],
])("a word that is not allowed is refused with those that are: %j", ({ means: taken, is }, message) => {
  const file = {
    windowline: 1,
    sheets: [{ sheet: "Kids", is, headerRows: [1], headings: [{ heading: "DOB", means: taken }] }],
  };
  expect(messagesOf(file)).toHaveLength(1);
  expect(messagesOf(file)[0]).toMatch(message);
});

test.each([
  [{ ageBasis: "adjusted" }, /ageBasis must be corrected \(.*\) or chronological \(/],
  [{ expectedShare: 75 }, /expectedShare must be a share above 0, up to 1, such as 0\.75, or null/],
  [{ opens: "3" }, /opens must be months of age from 0 to 216, or null/],
  [{ opens: 12, closes: 6 }, /closes must be later than opens/],
])("a skill that says %j is refused with what is allowed", (more, message) => {
  const said = messagesOf({ windowline: 1, skills: [{ skill: "Sits", ...more }] });
  expect(said).toHaveLength(1);
  expect(said[0]).toMatch(message);
});

function messagesOf(file: unknown): readonly string[] {
  const read = fromFile(file);
  return "messages" in read ? read.messages : [];
}
