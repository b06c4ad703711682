import type { Skill } from "../../../src/records/records";
import type { PreparedRelease } from "../../../src/release/prepared";
import type { ReleasedTable } from "../../../src/release/release-table";
import type { WordsContext } from "../../../src/release/words/words-context";
import type { ReleasableId, Table } from "../../../src/tables/table";

/** Two skills of the invented Alder Fork program; windows as published (WHO 2006; CDC/AAP 2022), typed from memory. */
export const SKILLS: readonly Skill[] = [
  skill("walk-alone", "Walks several steps alone", "gross motor", 8.2, 17.6, 0.99, "WHO 2006, walking alone"),
  skill("first-words", "Says three words", "speech", null, 15, 0.75, "CDC/AAP 2022"),
  skill("own-idea", "Finds a hidden toy", "cognitive", 8, 12, null, ""),
];

function skill(
  id: string,
  label: string,
  area: string,
  opensMonths: number | null,
  closesMonths: number,
  expectedShare: number | null,
  basis: string,
): Skill {
  return {
    id,
    label,
    area,
    opensMonths,
    closesMonths,
    ageBasis: "corrected",
    expectedShare,
    follows: null,
    tryTogether: "",
    sense: null,
    basis,
  } as Skill;
}

const BOX_COLUMNS = [
  { key: "Site", label: "Site", unit: "text" },
  { key: "skill", label: "Skill", unit: "text" },
  { key: "area", label: "Area", unit: "text" },
  { key: "band", label: "Age group", unit: "text" },
  { key: "children", label: "Children", unit: "children" },
  { key: "assessed", label: "Up-to-date checks", unit: "children" },
  { key: "met", label: "Met", unit: "children" },
  { key: "shareMet", label: "Share met", unit: "share" },
  { key: "lower", label: "Lower limit", unit: "share" },
  { key: "upper", label: "Upper limit", unit: "share" },
] as const;

const BAND = "12 to <18 months";

/** What the records say, from inside the program. Wilson's limits of 53 of 85 are those of SHARE(53, 85). */
export const TRUE_BANDS: Table<ReleasableId> = {
  id: "met-by-band",
  title: "Children who have met each skill, by age group",
  population: "Children in the program on the as-of date",
  columns: BOX_COLUMNS,
  rows: [
    ["North", "walk-alone", "gross motor", BAND, 90, 85, 53, 53 / 85, 0.5173, 0.7189],
    ["South", "walk-alone", "gross motor", BAND, 40, 37, 4, 4 / 37, 0.0429, 0.2471],
    ["North", "all", "gross motor", BAND, 180, 160, 120, 0.75, null, null],
  ],
  notes: ["Up-to-date checks are the children less those not checked and those who need a recheck."],
};

export const BANDS: ReleasedTable = {
  ...TRUE_BANDS,
  rows: [
    TRUE_BANDS.rows[0]!,
    ["South", "walk-alone", "gross motor", BAND, 40, 37, "*", "*", "*", "*"],
    TRUE_BANDS.rows[2]!,
  ],
};

export const STEPS: ReleasedTable = {
  id: "referral-steps",
  title: "How far referrals came, and how long they took",
  population: "Referrals made in the period on a day on which the child was followed",
  columns: [
    { key: "step", label: "Step", unit: "text" },
    { key: "of", label: "Of", unit: "count" },
    { key: "count", label: "Referrals", unit: "count" },
    { key: "share", label: "Share", unit: "share" },
    { key: "lower", label: "Lower limit", unit: "share" },
    { key: "upper", label: "Upper limit", unit: "share" },
    { key: "medianDays", label: "Median days from receipt", unit: "days" },
    { key: "within45", label: "Plan within 45 days", unit: "count" },
    { key: "of45", label: "Of those whose 45 days can be judged", unit: "count" },
  ],
  rows: [
    ["referred", 64, 64, 1, 0.9434, 1, null, null, null],
    ["evaluated", 64, 48, 0.75, 0.6318, 0.8399, 21, null, null],
    ["plan", 30, "*", "*", "*", "*", "*", { from: 11, to: 19 }, 25],
  ],
  notes: ["Steps after the as-of date are not yet taken."],
};

export const CONTEXT: WordsContext = {
  asOf: "2026-09-30",
  from: "2026-07-01",
  rule: { minimumCell: 11, method: "hide", base: null },
  level: 0.95,
  skills: SKILLS,
};

export function prepared(tables: readonly ReleasedTable[] = [BANDS, STEPS]): PreparedRelease {
  return {
    asOf: CONTEXT.asOf,
    from: CONTEXT.from,
    rule: CONTEXT.rule,
    tables,
    flags: ["met-by-band, North, walk-alone, 24 to <36 months: all children assessed had met it"],
    notCovered: [
      "Earlier releases of other as-of dates: children who joined or left in between are not tied by any equation.",
    ],
    protection: { counts: 30, hidden: 3, small: 1, loss: 9, bound: 8.5, stoppedEarly: false },
    attack: { attacked: 1, witnesses: 1 },
    entry: {
      asOf: CONTEXT.asOf,
      from: CONTEXT.from,
      tables: tables.map(({ id }) => id),
      rule: CONTEXT.rule,
      definition: "recheck 90",
      cells: [{ key: "a", place: "met-by-band, South: Met", shown: null }],
      equations: [],
    },
  };
}
