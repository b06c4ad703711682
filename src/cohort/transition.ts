import type { Day } from "../age/day";
import { addMonths } from "../age/months";

/** The dates of leaving early intervention, for one child. */
export interface Transition {
  readonly thirdBirthday: Day;
  /** The last day on which the transition conference is held in time. */
  readonly conferenceBy: Day;
  /** The first day on which it may be held. */
  readonly conferenceFrom: Day;
}

const DAYS_BEFORE = 90;
const MONTHS_BEFORE_AT_MOST = 9;

/**
 * A conference not fewer than 90 days, and not more than 9 months, before the third birthday. Source: 34 CFR 303.209(c)
 * (the 9 months: from memory). A child born on 29 February turns three on 28 February here, as months are added everywhere.
 */
export function transitionOf(birth: Day): Transition {
  const thirdBirthday = addMonths(birth, 36);
  return {
    thirdBirthday,
    conferenceBy: thirdBirthday - DAYS_BEFORE,
    conferenceFrom: addMonths(thirdBirthday, -MONTHS_BEFORE_AT_MOST),
  };
}

/** The dates from the first day on which the conference may be held until the day before the third birthday; else null. */
export function transitionDue(birth: Day, on: Day): Transition | null {
  const transition = transitionOf(birth);
  return transition.conferenceFrom <= on && on < transition.thirdBirthday ? transition : null;
}
