import { type AgeClock, ageMonthsOn } from "../age/correction";
import { BOX, boxOn } from "../cohort/boxes";
import { replacedSkills } from "../cohort/replaced";
import { windowStatus } from "../cohort/window";
import type { Skill } from "../records/records";
import { shareInterval } from "../statistics/share";
import { groupOfFollowed, type TableContext } from "./context";
import type { Table, TableColumn, TableValue } from "./table";

const COLUMNS: readonly TableColumn[] = [
  { key: "skill", label: "Skill", unit: "text" },
  { key: "area", label: "Area", unit: "text" },
  { key: "kind", label: "Share expected by the close", unit: "text" },
  { key: "children", label: "Children", unit: "children" },
  { key: "beforeWindow", label: "Before the window", unit: "children" },
  { key: "inWindow", label: "Within the window", unit: "children" },
  { key: "pastWindow", label: "Past the window", unit: "children" },
  { key: "met", label: "Past: met", unit: "children" },
  { key: "notMet", label: "Past: checked, not yet met", unit: "children" },
  { key: "lost", label: "Past: lost", unit: "children" },
  { key: "needsRecheck", label: "Past: needs a recheck", unit: "children" },
  { key: "notChecked", label: "Past: not checked", unit: "children" },
  { key: "checked", label: "Past: up-to-date checks", unit: "children" },
  { key: "shareMet", label: "Share met of up-to-date checks", unit: "share" },
  { key: "lower", label: "Lower limit", unit: "share" },
  { key: "upper", label: "Upper limit", unit: "share" },
  { key: "expectedShare", label: "Share in the window's source", unit: "share" },
  { key: "childrenAllMet", label: "Children: all met", unit: "children" },
  { key: "childrenOneMissing", label: "Children: one missing", unit: "children" },
  { key: "childrenMoreMissing", label: "Children: two or more missing", unit: "children" },
  { key: "childrenNotKnown", label: "Children: not known", unit: "children" },
];

const NOTES: readonly string[] = [
  "Age on that day against the expected window of each skill: before it opens, within it, past its close. Where no opening is published, nobody is before the window; a skill without a window counts nobody before, within or past.",
  "Those past the window are met, checked and not yet met, lost, in need of a recheck, or not checked. A skill that a later one has replaced counts as met once that one is met (a child who walks need not crawl).",
  "The share met is of the up-to-date checks: met, not yet met and lost. Beside it is the share of children in the window's source who do it by the close. Past a window of 0.75 is nothing unusual for one child: up to one in four is. Past one of 0.99 is. Kinds of windows are never added up.",
  'Rows with skill "all" add up the skills of an area with one kind of window: they count skill checks and carry no interval, because the skills of one child go together. Beside them each child with something of the kind expected is counted once: two or more skills missing (not yet met or lost); else something not known; else one missing; else all met.',
  "A missing skill is a reason to talk with the child's clinician, not a finding about the child.",
];

/** Table 10: the children in the program against the windows of all skills (METHOD.md, section 6). */
export function expectedByNow(context: TableContext): Table<"expected-by-now"> {
  const { skills } = context.cohort;
  const standings = standingsOf(context);
  return {
    id: "expected-by-now",
    title: "What children can be expected to do by now",
    population: "Children in the program on the as-of date",
    columns: COLUMNS,
    rows: [
      ...skills.map((skill, at) =>
        skillRow(skill, countsOf(standings.map((child) => child[at]!)), context.settings.level),
      ),
      ...areasAndKinds(skills).map((row) => areaRow(row, standings)),
    ],
    notes: NOTES,
  };
}

/** Where one child stands with one skill. Past the window, what is known of it. */
type Standing = "no window" | "beforeWindow" | "inWindow" | Past;
type Past = "met" | "notMet" | "lost" | "needsRecheck" | "notChecked";

const PAST: readonly Past[] = ["met", "notMet", "lost", "needsRecheck", "notChecked"];

const PAST_OF_BOX: Readonly<Record<number, Past>> = {
  [BOX.hadAtFirstLook]: "met",
  [BOX.gained]: "met",
  [BOX.notMet]: "notMet",
  [BOX.outOfDate]: "needsRecheck",
  [BOX.lost]: "lost",
  [BOX.notAssessed]: "notChecked",
};

/** For each child in the program, its standing with every skill. */
function standingsOf(context: TableContext): Standing[][] {
  const { cohort, attainment } = context;
  return [...groupOfFollowed(context)].flatMap((group, child) => {
    if (group < 0) return [];
    const replaced = replacedSkills(attainment, cohort.skills, child);
    return [cohort.skills.map((skill, at) => standingOf(context, child, at, skill, replaced[at] === 1))];
  });
}

function standingOf(
  { cohort, attainment, asOf, settings }: TableContext,
  child: number,
  index: number,
  skill: Skill,
  isReplaced: boolean,
): Standing {
  const window = windowStatus(ageMonthsOn(cohort.clocks[child] as AgeClock, asOf, skill.ageBasis), skill);
  if (window === null) return "no window";
  if (window !== "past window") return window === "before window" ? "beforeWindow" : "inWindow";
  if (isReplaced) return "met";
  return PAST_OF_BOX[boxOn(cohort, attainment, child, index, asOf, settings.recheckDays)] as Past;
}

type Counts = Readonly<Record<Standing, number>> & { readonly children: number };

function countsOf(standings: readonly Standing[]): Counts {
  const counts = {
    ...{ children: standings.length, "no window": 0, beforeWindow: 0, inWindow: 0 },
    ...{ met: 0, notMet: 0, lost: 0, needsRecheck: 0, notChecked: 0 },
  };
  for (const standing of standings) counts[standing] += 1;
  return counts;
}

const NO_CHILDREN_COUNTED: readonly null[] = [null, null, null, null];

function skillRow(skill: Skill, counts: Counts, level: number): TableValue[] {
  const { lower, upper } = shareInterval(counts.met, checkedOf(counts), level, "wilson");
  return [
    skill.id,
    skill.area,
    kindOf(skill),
    ...figures(counts, [lower, upper]),
    skill.expectedShare,
    ...NO_CHILDREN_COUNTED,
  ];
}

interface AreaAndKind {
  readonly area: string;
  readonly kind: string;
  readonly expectedShare: number | null;
  /** Indices of the skills of that area with windows of that kind. */
  readonly skills: readonly number[];
}

/** Areas in the order of the skills, and in each the kinds that it has, the highest share first. */
function areasAndKinds(skills: readonly Skill[]): AreaAndKind[] {
  const areas = [...new Set(skills.map(({ area }) => area))];
  const shares = [...new Set(skills.map(({ expectedShare }) => expectedShare))].sort((a, b) => (b ?? -1) - (a ?? -1));
  return areas.flatMap((area) =>
    shares.flatMap((expectedShare) => {
      const own = skills.flatMap((skill, at) =>
        skill.area === area && skill.expectedShare === expectedShare ? [at] : [],
      );
      return own.length === 0 ? [] : [{ area, kind: kindOf({ expectedShare }), expectedShare, skills: own }];
    }),
  );
}

function areaRow({ area, kind, expectedShare, skills }: AreaAndKind, children: readonly Standing[][]): TableValue[] {
  const own = children.map((standings) => skills.map((at) => standings[at]!));
  const placed = own.map(placeOf);
  const inPlace = (place: ReturnType<typeof placeOf>) => placed.filter((each) => each === place).length;
  return [
    "all",
    area,
    kind,
    ...figures(countsOf(own.flat()), [null, null]),
    expectedShare,
    ...[inPlace("all met"), inPlace("one missing"), inPlace("more missing"), inPlace("not known")],
  ];
}

/** Where a child stands in an area; null where nothing is expected of it there yet. */
function placeOf(standings: readonly Standing[]): "all met" | "one missing" | "more missing" | "not known" | null {
  const count = (...wanted: Standing[]) => standings.filter((each) => wanted.includes(each)).length;
  if (count(...PAST) === 0) return null;
  const missing = count("notMet", "lost");
  if (missing >= 2) return "more missing";
  if (count("needsRecheck", "notChecked") > 0) return "not known";
  return missing === 1 ? "one missing" : "all met";
}

function figures(counts: Counts, [lower, upper]: readonly [TableValue, TableValue]): TableValue[] {
  const checked = checkedOf(counts);
  return [
    counts.children,
    counts.beforeWindow,
    counts.inWindow,
    PAST.reduce((sum, standing) => sum + counts[standing], 0),
    ...PAST.map((standing) => counts[standing]),
    checked,
    checked === 0 ? null : counts.met / checked,
    lower,
    upper,
  ];
}

function checkedOf({ met, notMet, lost }: Counts): number {
  return met + notMet + lost;
}

/** `0.99`, `0.75`, or `none` where the source gives no share. */
function kindOf({ expectedShare }: Pick<Skill, "expectedShare">): string {
  return expectedShare === null ? "none" : String(expectedShare);
}
