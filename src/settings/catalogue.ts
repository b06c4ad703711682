import { USUAL_EDGES } from "../age/bands";
import {
  correctedUntil,
  date,
  type EntryKind,
  gestationBelow,
  headings,
  risingMonths,
  share,
  whole,
  wholeOrNone,
  word,
  yesNo,
} from "./entries";

/** What changes with a setting. */
export type Bearing =
  /** What is found in the records, before any figure is made. */
  | "reading"
  /** Which rows count, by the day they were typed in. */
  | "entry"
  /** The days that figures are about. */
  | "period"
  /** How old a child is on a day. */
  | "ages"
  /** When a skill counts as met. */
  | "met"
  /** How a skill that is not met is counted. */
  | "boxes"
  /** How children are put together. */
  | "groups"
  | "confidence"
  | "chance"
  /** The scan for clusters of referrals, and nothing else. */
  | "clusters"
  /** Which progress category two levels give. */
  | "ratings"
  /** What may leave the program, and how. */
  | "release";

/** All that is declared about one setting. */
export interface SettingDeclaration<Value, Usual extends Value | null> {
  readonly entry: EntryKind<Value>;
  /** Taken where nothing is said; null: not set. */
  readonly usual: Usual;
  readonly bearsOn: readonly Bearing[];
  /** The name of its field in the pane. */
  readonly label: string;
  /** What it does, in a sentence. */
  readonly about: string;
  /** What happens where it is left out, if its usual value does not say so. */
  readonly leftOut?: string;
  /** Where few answers are legal: each in words. The first, "", is what leaving it out means. */
  readonly choices?: readonly { readonly value: string; readonly label: string }[];
}

/**
 * Every choice that changes a number, in the order in which they are written out. The names are the same on every surface:
 * the pane, the command line, the settings sheet, REPORT.json. Every list of settings is derived from this one.
 */
export const SETTING_CATALOGUE = {
  /** The day the figures are true for; null only for a check that does not judge future dates. */
  asOf: optional(date, {
    bearsOn: ["reading", "period"],
    label: "As-of date",
    about: "The day the figures are true for.",
    leftOut: "no day, so that only a check can be made",
  }),
  /** First day of the period. */
  from: optional(date, {
    bearsOn: ["period"],
    label: "First day of the period",
    about: "The first day of the period that the figures are about.",
    leftOut: "the first day of the as-of date's quarter",
  }),
  /** Rows entered after this day are left out; null: no cut-off. */
  enteredBy: optional(date, {
    bearsOn: ["reading", "entry"],
    label: "Entered by",
    about: "Leaves out rows typed in after this day.",
    leftOut: "no cut-off",
  }),
  correctBelow: setting(gestationBelow, 259, {
    bearsOn: ["ages"],
    label: "Correct ages of children born before",
    about: "Corrects the ages of children born before this gestation: weeks and days, or never.",
  }),
  correctUntil: setting(
    correctedUntil,
    { untilMonths: 24, untilAge: "chronological" },
    {
      bearsOn: ["ages"],
      label: "Correct ages until",
      about: "Stops correcting at this age: months, such as 24, 36 corrected, or always.",
    },
  ),
  /** Age-band edges, months, rising. */
  edges: setting(risingMonths, USUAL_EDGES, {
    bearsOn: ["groups"],
    label: "Edges of the age groups",
    about: "The ages in months at which one age group ends and the next begins.",
  }),
  /** Days; Infinity: never. */
  recheck: setting(wholeOrNone(1, 3650, "days"), 90, {
    bearsOn: ["boxes"],
    label: "A skill needs a recheck after",
    about: "A skill not met needs a recheck when it was last checked more days ago than this; none: never.",
  }),
  disagreement: setting(word("not met", "met"), "not met", {
    bearsOn: ["met"],
    label: "Different results on one day count as",
    about: "How different results for one child, skill and day count where one of them is met.",
    choices: [
      { value: "", label: "Not met" },
      { value: "met", label: "Met" },
    ],
  }),
  /** Confidence level of every interval, 0 to 1. */
  level: setting(share, 0.95, {
    bearsOn: ["confidence"],
    label: "Confidence level",
    about: "The confidence level of intervals, as a share.",
  }),
  /** Headings of Children to group by. */
  by: setting(headings, [], {
    bearsOn: ["groups"],
    label: "Groups by",
    about: "The columns of Children to group by, separated by commas, such as Site,Therapist.",
    leftOut: "no groups",
  }),
  minimumCell: setting(whole(1, 1000, "children"), 11, {
    bearsOn: ["release"],
    label: "Least number of children",
    about: "The smallest count that a release may show.",
  }),
  floor: setting(whole(1, 1000, "children"), 5, {
    bearsOn: ["release"],
    label: "The floor of this program",
    about: "The lowest value that the smallest count may be set to: no release goes below it.",
  }),
  releaseMethod: setting(word("hide", "round", "ranges"), "hide", {
    bearsOn: ["release"],
    label: "What is done with counts that may not be shown",
    about: "How a release protects small counts. Each way is then tested as a reader from outside would test it.",
    choices: [
      { value: "", label: "Hidden, with as few others as make them safe" },
      { value: "round", label: "All counts rounded, so that they still add up" },
      { value: "ranges", label: "Given as ranges" },
    ],
  }),
  /** Whether a share of 0% or 100% of a group is only told to whoever releases it, or hidden like a small count. */
  wholeGroups: setting(word("flag", "hide"), "flag", {
    bearsOn: ["release"],
    label: "Where all or none of a group have something",
    about:
      "Whether a release only lists 0% and 100% of a group, or hides them: they say of every child what they say of the group.",
    choices: [
      { value: "", label: "Shown, and listed for you" },
      { value: "hide", label: "Held back" },
    ],
  }),
  ratingLevels: setting(whole(2, 10, "levels"), 5, {
    bearsOn: ["reading", "ratings"],
    label: "Levels of the outcome scale",
    about: "How many levels your scale of entry and exit levels has.",
  }),
  peerLevel: setting(whole(2, 10), 5, {
    bearsOn: ["reading", "ratings"],
    label: "Level that means: as children of the same age",
    about: "The lowest level of your scale that means: as children of the same age.",
  }),
  scanMonths: setting(whole(2, 120, "months"), 24, {
    bearsOn: ["clusters"],
    label: "Months scanned for clusters",
    about: "How many months back clusters of referrals are searched for.",
  }),
  gestationDecimals: optional(word("days", "weeks"), {
    bearsOn: ["reading", "ages"],
    label: "A gestation such as 28.3 means",
    about: "How a gestation such as 28.3 is read where the column itself proves nothing.",
    leftOut: "not settled, so that such a child is not corrected",
    choices: [
      { value: "", label: "Not settled: such a child is not corrected" },
      { value: "days", label: "28 weeks and 3 days" },
      { value: "weeks", label: "28.3 weeks" },
    ],
  }),
  metDates: setting(word("seen", "exact"), "seen", {
    bearsOn: ["reading", "met"],
    label: "A date on a wide sheet is",
    about:
      "What a date is on a sheet with a column for each skill: the visit that saw the skill, or the day it was met.",
    choices: [
      { value: "", label: "The visit that saw the skill" },
      { value: "exact", label: "The day the skill was met" },
    ],
  }),
  seed: setting(whole(0, 2 ** 32 - 1), 20_240_229, {
    bearsOn: ["chance"],
    label: "Seed of the random numbers",
    about: "The seed of everything drawn by chance: the same seed gives the same figures.",
  }),
  /** How text dates are read where their column proves nothing; null: not settled. */
  monthFirst: optional(yesNo, {
    bearsOn: ["reading", "ages", "met"],
    label: "Text dates begin with",
    about: "Whether text dates begin with the month, where a column of them proves nothing.",
    leftOut: "not settled, so that such a column is not read",
    choices: [
      { value: "", label: "Not settled: such a column is not read" },
      { value: "no", label: "The day" },
      { value: "yes", label: "The month" },
    ],
  }),
};

export type SettingName = keyof typeof SETTING_CATALOGUE;

/** The value of each setting under its own name. */
export type SettingValues = {
  readonly [Name in SettingName]: (typeof SETTING_CATALOGUE)[Name] extends SettingDeclaration<infer Value, infer Usual>
    ? Value | Usual
    : never;
};

/** The names of all settings, as they are written on every surface. */
export const SETTING_NAMES = Object.keys(SETTING_CATALOGUE) as readonly SettingName[];

/** The settings that change any of these. */
export function settingsThatBearOn(...bearings: readonly Bearing[]): readonly SettingName[] {
  return SETTING_NAMES.filter((name) => SETTING_CATALOGUE[name].bearsOn.some((each) => bearings.includes(each)));
}

type Rest = Omit<SettingDeclaration<unknown, unknown>, "entry" | "usual">;

function setting<Value>(entry: EntryKind<Value>, usual: NoInfer<Value>, rest: Rest): SettingDeclaration<Value, Value> {
  return { entry, usual, ...rest };
}

/** One without a usual value. */
function optional<Value>(entry: EntryKind<Value>, rest: Rest): SettingDeclaration<Value, null> {
  return { entry, usual: null, ...rest };
}
