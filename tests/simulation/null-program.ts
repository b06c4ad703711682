import { ageClock, firstDayOfAge } from "../../src/age/correction";
import { dayOf } from "../../src/age/day";
import type { Cohort } from "../../src/cohort/cohort";
import { Following } from "../../src/cohort/following";
import { sortLooks } from "../../src/cohort/looks";
import { firstDayOfMonth, monthOf } from "../../src/cohort/person-time";
import { type Enrolments, NO_DAY, type Referrals } from "../../src/records/records";
import { usualSettings } from "../../src/settings/settings";
import { type Random, randomFrom } from "../../src/statistics/random";
import { type TableContext, tableContext } from "../../src/tables/context";

export interface NullOptions {
  readonly children: number;
  readonly sites: number;
  readonly scanMonths: number;
  /** How many times as many referrals come in March to May, at every site alike; 1 where left out. */
  readonly season?: number;
}

const AS_OF = dayOf(2026, 9, 30);
const AREAS = ["gross motor", "fine motor", "social-emotional", "cognitive", "speech", "sensory"];
/** Referrals per 100 child-months, by area. Invented. */
const PACE = [0.8, 0.3, 0.4, 0.35, 1.2, 0.25];
/** What the pace is multiplied with in each age band. Invented: it rises with age, so that age has to enter the scan. */
const BY_BAND = [0.2, 0.3, 0.5, 0.8, 1, 1.3, 1.6, 1.5, 1];
/** March to May, counted from 0. */
const SPRING = new Set([2, 3, 4]);
const SHARE_OF_TWO_AREAS = 0.12;
const BLANK_COLUMNS = { id: "", opensMonths: null, closesMonths: null, expectedShare: null, follows: null } as const;

/**
 * An invented program in which referrals depend on age and area alone: never on site or month. Sites differ in size and in
 * how old their children are, children come and go, and one referral in eight names two areas.
 */
export function nullProgram(seed: number, options: NullOptions): TableContext {
  const random = randomFrom(seed);
  const cohort = drawCohort(random, options);
  const settings = { ...usualSettings, asOf: AS_OF, from: AS_OF, scanMonths: options.scanMonths, seed };
  const referrals = drawReferrals(random, cohort, options);
  return tableContext(cohort, settings, {
    referrals,
    signs: null,
    ratings: null,
    observations: { day: new Int32Array(0), entered: new Int32Array(0), lastEntered: NO_DAY },
  });
}

function drawCohort(random: Random, { children, sites }: NullOptions): Cohort {
  const site = Array.from({ length: children }, () => Math.floor(random.nextUnit() ** 1.5 * sites));
  const birth = site.map((place) => AS_OF - 60 - random.nextInt(900 + 150 * (place % 3)));
  const enrolled = birth.map((day) => day + random.nextInt(500));
  const left = enrolled.map((day) => (random.nextUnit() < 0.3 ? NO_DAY : day + 60 + random.nextInt(700)));
  const enrolments: Enrolments = {
    child: Int32Array.from(site.keys()),
    enrolled: Int32Array.from(enrolled),
    left: Int32Array.from(left),
    columns: [{ heading: "Site", values: site.map((place) => `Site ${place + 1}`) }],
  };
  const none = new Int32Array(0);
  return {
    ids: site.map((_, child) => `C${child}`),
    clocks: birth.map((day) =>
      ageClock(day, random.nextUnit() < 0.12 ? 180 + random.nextInt(79) : null, usualSettings.correction),
    ),
    skills: AREAS.map((area) => ({
      ...BLANK_COLUMNS,
      area,
      label: area,
      ageBasis: "corrected",
      tryTogether: "",
      sense: null,
      basis: "",
    })),
    looks: sortLooks(
      {
        child: none,
        skill: new Uint16Array(0),
        day: none,
        result: new Uint8Array(0),
        exact: new Uint8Array(0),
        observer: none,
        observers: [],
        entered: none,
        lastEntered: NO_DAY,
      },
      children,
    ),
    observers: [],
    enrolments,
    following: new Following(enrolments, children),
    disagreementIsMet: false,
  };
}

/** Day by day: whether a followed child is referred hangs on its age that day, and on nothing else. */
function drawReferrals(random: Random, cohort: Cohort, { scanMonths: months, season = 1 }: NullOptions): Referrals {
  const from = firstDayOfMonth(monthOf(AS_OF) - months + 1);
  const pace = PACE.reduce((sum, each) => sum + each, 0) / 100 / 30.4375;
  const { edges } = usualSettings;
  const made: { child: number; referred: number; areas: string[] }[] = [];
  cohort.clocks.forEach((clock, child) => {
    const edgeDays = edges.map((edge) => firstDayOfAge(clock, edge));
    const left = cohort.enrolments.left[child] as number;
    const last = Math.min(AS_OF, left === NO_DAY ? AS_OF : left - 1);
    for (let day = Math.max(from, cohort.enrolments.enrolled[child] as number); day <= last; day += 1) {
      const band = edgeDays.filter((edge) => edge <= day).length;
      const ofMonth = SPRING.has(monthOf(day) % 12) ? season : 1;
      if (random.nextUnit() < pace * ofMonth * (BY_BAND[band] as number)) {
        made.push({ child, referred: day, areas: drawAreas(random) });
      }
    }
  });
  return referralsOf(made);
}

function drawAreas(random: Random): string[] {
  const first = drawArea(random);
  const second = random.nextUnit() < SHARE_OF_TWO_AREAS ? drawArea(random) : first;
  return [...new Set([first, second])];
}

function drawArea(random: Random): string {
  const total = PACE.reduce((sum, each) => sum + each, 0);
  let left = random.nextUnit() * total;
  const at = PACE.findIndex((pace) => (left -= pace) < 0);
  return AREAS[Math.max(0, at)] as string;
}

function referralsOf(made: readonly { child: number; referred: number; areas: string[] }[]): Referrals {
  const blank = new Int32Array(made.length).fill(NO_DAY);
  const empty = made.map(() => "");
  return {
    child: Int32Array.from(made, ({ child }) => child),
    referred: Int32Array.from(made, ({ referred }) => referred),
    areas: made.map(({ areas }) => areas),
    reason: empty,
    from: empty,
    to: empty,
    received: Int32Array.from(made, ({ referred }) => referred),
    evaluated: blank,
    eligible: new Int8Array(made.length).fill(-1),
    plan: blank,
    lateReason: empty,
    closed: blank,
  };
}
