import type { Day } from "../age/day";
import type { SampleChild } from "./children";
import type { Stay } from "./stays";

/** The enrolment in force on a day, or undefined where the child is not followed. */
export function stayOn(child: SampleChild, on: Day): Stay | undefined {
  return child.stays.find((stay) => stay.enrolled <= on && (stay.left === null || on < stay.left));
}
