import type { KnownNames } from "../../../src/release/text-check/people";
import { knownNames } from "../../../src/release/text-check/people";
import { checkText, type TextFinding } from "../../../src/release/text-check/check-text";
import type { ReleasedTable } from "../../../src/release/release-table";
import type { Table } from "../../../src/tables/table";

/** An invented program of two sites, whose release has no sites. Every number was made up for these tests. */
const COLUMNS = [
  { key: "skill", label: "Skill", unit: "text" },
  { key: "area", label: "Area", unit: "text" },
  { key: "band", label: "Age group", unit: "text" },
  { key: "children", label: "Children", unit: "children" },
  { key: "assessed", label: "Checked", unit: "children" },
  { key: "met", label: "Met", unit: "children" },
  { key: "lost", label: "Lost", unit: "children" },
  { key: "shareMet", label: "Share met", unit: "share" },
] as const;

const row = (
  skill: string,
  area: string,
  band: string,
  children: number,
  checked: number,
  met: number,
  lost: number,
) => [skill, area, band, children, checked, met, lost, met / checked];

const BANDS: Table & Pick<ReleasedTable, "id"> = {
  id: "met-by-band",
  title: "Children who have met each skill, by age group",
  population: "Children in the program on the day",
  columns: COLUMNS,
  rows: [
    row("walk-alone", "gross motor", "12 to <18 months", 96, 84, 61, 0),
    row("walk-alone", "gross motor", "18 to <24 months", 58, 55, 51, 0),
    row("first-words", "speech", "12 to <18 months", 96, 80, 42, 7),
    row("first-words", "speech", "18 to <24 months", 58, 49, 33, 0),
  ],
  notes: [],
};

const STEPS: Table & Pick<ReleasedTable, "id"> = {
  id: "referral-steps",
  title: "From referral to plan",
  population: "Referrals made in the period",
  columns: [
    { key: "step", label: "Step", unit: "text" },
    { key: "of", label: "Of", unit: "count" },
    { key: "count", label: "Referrals", unit: "count" },
    { key: "share", label: "Share", unit: "share" },
    { key: "medianDays", label: "Median days", unit: "days" },
  ],
  rows: [
    ["evaluated", 73, 66, 66 / 73, 24],
    ["eligible", 66, 47, 47 / 66, null],
    ["plan", 47, 38, 38 / 47, 39],
  ],
  notes: [],
};

/** Held back: the small count of 7 with its row of shares, and 51 of 55 with the 4 that it would give away. */
const released = (
  table: Table & Pick<ReleasedTable, "id">,
  held: Readonly<Record<number, readonly string[]>>,
): ReleasedTable => ({
  ...table,
  rows: table.rows.map((values, at) =>
    values.map((value, column) => (held[at]?.includes(table.columns[column]!.key) ? "*" : value)),
  ),
});

/** Children who left, and were rated: their 47 is held back, and the 58 of the age group is theirs too. */
const RATINGS: Table & Pick<ReleasedTable, "id"> = {
  id: "ratings",
  title: "Outcome ratings",
  population: "Children who left in the period",
  columns: [
    { key: "outcome", label: "Outcome", unit: "text" },
    { key: "of", label: "Of", unit: "children" },
    { key: "count", label: "Children", unit: "children" },
    { key: "percent", label: "Percent", unit: "percent" },
  ],
  rows: [
    ["Being with others", 58, 49, (100 * 49) / 58],
    ["Getting things done", 84, 33, (100 * 33) / 84],
  ],
  notes: [],
};

const TRUTH = [BANDS, STEPS, RATINGS];
const RELEASE = {
  asOf: "2026-09-30",
  from: "2026-07-01",
  rule: { minimumCell: 11, method: "hide", base: null } as const,
  tables: [
    released(BANDS, { 1: ["met", "shareMet"], 2: ["lost", "met", "shareMet"] }),
    released(STEPS, { 2: ["count", "share"] }),
    released(RATINGS, { 0: ["of", "count", "percent"], 1: ["of", "count", "percent"] }),
  ],
};

const NAMES: KnownNames = knownNames(
  {
    children: {
      ids: ["WB-0042", "WB-0107", "61", "20417"],
      birth: new Int32Array(4),
      gestationDays: new Int16Array(4),
      family: ["F19", "F20", "", ""],
    },
    enrolments: {
      child: Int32Array.of(0, 1, 2, 3),
      enrolled: new Int32Array(4),
      left: new Int32Array(4),
      columns: [
        { heading: "Site", values: ["Quarry", "Mill Street", "Quarry", "Mill Street"] },
        { heading: "Therapist", values: ["T-07", "Dora", "T-07", "Dora"] },
        { heading: "Home language", values: ["Portuguese", "Portuguese", "English", "English"] },
      ],
    },
    observations: { observers: ["OB3"] },
  } as never,
  [],
);

const SKILLS = [
  { id: "walk-alone", label: "Walks several steps alone", opensMonths: 8.2, closesMonths: 17.6 },
  { id: "first-words", label: "Says three words", opensMonths: null, closesMonths: 15 },
];

/** @param said - sentences of the release itself */
export function check(text: string, said: readonly string[] = []): TextFinding[] {
  return checkText(text, RELEASE, { truth: TRUTH, skills: SKILLS, names: NAMES, said });
}

/** A text beside a release of these tables instead of the program's. */
export function checkBeside(text: string, tables: readonly ReleasedTable[]): TextFinding[] {
  return checkText(text, { ...RELEASE, tables }, { truth: [], skills: [], names: NAMES, said: [] });
}
