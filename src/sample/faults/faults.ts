import type { Day } from "../../age/day";
import type { SampleTable } from "../tables";
import { faultyChildren } from "./children";
import type { Draft } from "./draft";
import { faultyObservations } from "./observations";
import { faultyRatings } from "./ratings";
import { faultyReferrals } from "./referrals";
import { faultySigns } from "./signs";
import { faultySkills } from "./skills";
import { wideSheet } from "./wide";

/** The same program as a real office might keep it: every usual fault of a spreadsheet, each planted on purpose and listed. */
export function plantFaults(tables: readonly SampleTable[], last: Day): Draft[] {
  const table = (name: string): SampleTable => {
    const found = tables.find((each) => each.name === name);
    if (!found) throw new RangeError(`plantFaults: there is no table ${name}`);
    return found;
  };
  return [
    faultyChildren(table("Children"), last),
    faultyObservations(table("Observations"), last),
    faultySkills(table("Skills")),
    faultyReferrals(table("Referrals"), last),
    faultySigns(table("Signs"), last),
    faultyRatings(table("Ratings"), last),
    wideSheet(last),
  ];
}
