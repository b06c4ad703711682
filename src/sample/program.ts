import { type Day, dayOf } from "../age/day";
import type { SampleArea } from "./skills";

/** The invented Alder Fork program: places and people by code, and the chances its records are drawn with. */
export interface Site {
  readonly name: string;
  readonly therapists: readonly string[];
  /** Relative number of children. */
  readonly weight: number;
}

export const SITES: readonly Site[] = [
  { name: "North", therapists: ["T01", "T02", "T03", "T04", "T05"], weight: 45 },
  { name: "River", therapists: ["T06", "T07", "T08", "T09"], weight: 33 },
  { name: "Hill", therapists: ["T10", "T11", "T12"], weight: 22 },
];

export const USUAL_END: Day = dayOf(2026, 9, 30);
/** Three years of records: the first day is this many calendar months before the day after the end. */
export const MONTHS_OF_RECORDS = 36;

/** Share of births before 37 weeks that the draws aim at. */
export const PRETERM_SHARE = 0.12;
/** Children who go from sitting to walking and never crawl. Source: WHO MGRS 2006, Acta Paediatr Suppl 450:86-95: 4.3%. */
export const NEVER_CRAWLED_SHARE = 0.043;

/** Referrals per 100 child-months, by area. Invented. */
export const REFERRALS_PER_100_CHILD_MONTHS: Readonly<Record<SampleArea, number>> = {
  "gross motor": 0.8,
  "fine motor": 0.3,
  "social-emotional": 0.4,
  cognitive: 0.35,
  speech: 1.2,
  sensory: 0.25,
};

/** The one true cluster of the sample: referrals of one area at one site in a few months, planted on purpose. */
export const CLUSTER = {
  site: "River",
  area: "speech" as SampleArea,
  /** Calendar months before the month of the end date, first and last. */
  firstMonthsBack: 8,
  lastMonthsBack: 6,
  /** Chance that a child followed there in such a month, and not yet referred for it, is referred. */
  monthlyChance: 0.11,
} as const;

/** A warning sign looked for around six months, and the skill that is missing where it is there; "" for none of the list. */
export interface SignAtSixMonths {
  readonly sign: string;
  readonly skill: string;
}

/** Warning signs looked for around six months (common practice, no source), and one for any age. */
export const SIGNS_AT_SIX_MONTHS: readonly SignAtSixMonths[] = [
  { sign: "very stiff body", skill: "" },
  { sign: "very floppy body", skill: "" },
  { sign: "does not reach for what is close by", skill: "reach-toy" },
  { sign: "rolls neither way", skill: "roll-both" },
  { sign: "little contact with the main caregiver", skill: "" },
];
export const SIGN_OF_LOSS = "no longer does something done before";

export const OUTCOMES: readonly string[] = ["Being with others", "Finding out and learning", "Getting things done"];
