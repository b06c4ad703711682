import type { Day } from "../age/day";
import { addMonths } from "../age/months";
import type { Chance } from "./chance";
import { SITES, type Site } from "./program";

/** One enrolment of a child: a row of the Children table. */
export interface Stay {
  readonly site: string;
  readonly therapist: string;
  readonly enrolled: Day;
  /** The first day no longer followed; null while the child is still enrolled. */
  readonly left: Day | null;
}

/** The program follows children to their third birthday. */
const LEAVING_AGE_MONTHS = 36;
/** Chance in a month that a family is lost to follow-up or moves away. */
const MONTHLY_LOSS = 0.017;
const SHARE_COMING_BACK = 0.35;

export function drawStays(chance: Chance, site: Site, birth: Day, enrolled: Day, last: Day): Stay[] {
  const thirdBirthday = addMonths(birth, LEAVING_AGE_MONTHS);
  const first = drawStay(chance, site, enrolled, thirdBirthday, last);
  if (first.left === null || first.left >= thirdBirthday || !chance.yes(SHARE_COMING_BACK)) return [first];
  const back = first.left + chance.whole(50, 200);
  if (back > Math.min(last, thirdBirthday) - 60) return [first];
  const nextSite = chance.yes(0.25) ? chance.pick(SITES) : site;
  return [first, drawStay(chance, nextSite, back, thirdBirthday, last)];
}

function drawStay(chance: Chance, site: Site, enrolled: Day, thirdBirthday: Day, last: Day): Stay {
  let left = enrolled + chance.whole(20, 45);
  while (left < thirdBirthday && !chance.yes(MONTHLY_LOSS)) left += 30;
  left = Math.min(left, thirdBirthday);
  return { site: site.name, therapist: chance.pick(site.therapists), enrolled, left: left <= last ? left : null };
}
