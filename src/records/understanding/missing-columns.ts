import type { SheetKind } from "../corrections/settled";
import type { ColumnSpec } from "../tables/spec";
import { canBe, likeliest } from "./guess-headings";
import { specOfKind } from "./kinds";
import type { HeadingSeen, MissingColumn, SheetTaken } from "./understanding";

/** Columns without which figures mean something else, and what nobody knows without them. */
const MATTERS: readonly (readonly [is: SheetKind, key: string, sentence: string])[] = [
  ["children", "enrolled", "No column says when a child was enrolled: every child counts from the first check on."],
  ["children", "left", "No column says who left the program: every child counts as still there."],
  ["children", "gestation", "No column says how early a child was born: no age is corrected."],
  ["children", "site", "No column names the site: figures by site cannot be made."],
  ["children", "therapist", "No column names the therapist: caseloads cannot be made."],
  [
    "ratings",
    "newSinceEntry",
    "No column says whether a child gained any skill: some ratings stay open between two categories.",
  ],
];

/** What can stand in for a column. */
const INSTEAD: Readonly<Record<string, readonly string[]>> = { gestation: ["dueDate", "weeksEarly"] };

/** The columns that matter and that no sheet of their kind has, each with the heading that is likeliest to be one. */
export function missingColumns(sheets: readonly SheetTaken[]): MissingColumn[] {
  return MATTERS.flatMap(([is, key, sentence]): MissingColumn[] => {
    const own = sheets.filter((sheet) => sheet.is === is);
    const columns = specOfKind(is)?.columns ?? [];
    const column = columns.find((each) => each.key === key) as ColumnSpec;
    const enough = [key, ...(INSTEAD[key] ?? [])].map((each) => columns.find((one) => one.key === each)?.heading);
    if (own.length === 0 || own.some(({ headings }) => headings.some(({ means }) => enough.includes(means ?? ""))))
      return [];
    const candidate = candidateOf(own, is, column);
    const question = candidate ? ` Is it ${candidate.heading}?` : "";
    return [{ table: tableNames[is] ?? is, column: column.heading, sentence: `${sentence}${question}`, candidate }];
  });
}

const tableNames: Partial<Record<SheetKind, string>> = { children: "Children", ratings: "Ratings" };

/** By its words first; else the only column left whose cells could be such. */
function candidateOf(sheets: readonly SheetTaken[], is: SheetKind, column: ColumnSpec): MissingColumn["candidate"] {
  const spec = specOfKind(is);
  for (const sheet of sheets) {
    const free = sheet.headings.filter(
      ({ means, skill, cell }) => (means === null || means === "Group") && skill === null && cell !== "",
    );
    const named = spec && likeliest(spec, column, free);
    const fitting = free.filter((each) => fits(column, each));
    const found = named ?? (fitting.length === 1 ? fitting[0] : undefined);
    if (found) return { key: sheet.key, heading: found.heading, cell: found.cell };
  }
  return null;
}

function fits(column: ColumnSpec, each: HeadingSeen): boolean {
  return column.kind === "date" && each.content === "dates" && canBe(column, each.content);
}
