import type { Day } from "../age/day";
import { type Chance, chanceOf } from "./chance";
import type { SampleChild } from "./children";
import { SITES } from "./program";
import type { Stay } from "./stays";

export interface Visit {
  readonly child: number;
  readonly day: Day;
  /** The first visit of the child's first enrolment. */
  readonly intake: boolean;
  readonly observer: string;
  /** A second observer who looks at the same skills that day; "" for none. */
  readonly secondObserver: string;
}

const SHARE_WITH_TWO_OBSERVERS = 0.04;
const SHARE_MISSED = 0.12;

/** Visits every few weeks while a child is enrolled, on working days, some of them missed. */
export function drawVisits(
  children: readonly SampleChild[],
  seed: number,
  last: Day,
  secondObservers: boolean,
): Visit[] {
  const chance = chanceOf(seed, 4);
  return children.flatMap((child, index) =>
    child.stays.flatMap((stay, which) => {
      const days = visitDays(chance, stay.enrolled, Math.min(stay.left === null ? last : stay.left - 1, last));
      return days.map((day, visit) => ({
        child: index,
        day,
        intake: which === 0 && visit === 0,
        observer: stay.therapist,
        secondObserver: secondObserver(chance, stay, secondObservers),
      }));
    }),
  );
}

function visitDays(chance: Chance, from: Day, to: Day): Day[] {
  const days: Day[] = [];
  let day = from + chance.whole(0, 10);
  while (day <= to) {
    if (workingDay(day) <= to && !chance.yes(days.length > 0 ? SHARE_MISSED : 0)) days.push(workingDay(day));
    day += chance.whole(18, 40);
  }
  return days;
}

/** The day itself, or the Monday after it. January 1, 1970 was a Thursday. */
function workingDay(day: Day): Day {
  const weekday = (((day + 3) % 7) + 7) % 7;
  return weekday < 5 ? day : day + 7 - weekday;
}

/** Drawn even where it is not asked for, so that the same visits follow. */
function secondObserver(chance: Chance, stay: Stay, asked: boolean): string {
  const others =
    SITES.find((each) => each.name === stay.site)?.therapists.filter((each) => each !== stay.therapist) ?? [];
  const colleague = chance.pick(others);
  return chance.yes(SHARE_WITH_TWO_OBSERVERS) && asked ? colleague : "";
}
