import type { Day } from "../../age/day";
import type { SheetOut } from "../../workbook/sheets";
import type { SampleTable } from "../tables";
import { faultyChildren } from "./children";
import { faultsOfDraft, type PlantedFault, sheetOfDraft } from "./draft";
import { faultyObservations } from "./observations";
import { faultyRatings } from "./ratings";
import { faultyReferrals } from "./referrals";
import { faultySigns } from "./signs";
import { faultySkills } from "./skills";
import { wideSheet } from "./wide";

export interface Faulty {
  readonly sheets: readonly SheetOut[];
  readonly faults: readonly PlantedFault[];
}

/** The same program as a real office might keep it: every usual fault of a spreadsheet, each planted on purpose and listed. */
export function plantFaults(tables: readonly SampleTable[], last: Day): Faulty {
  const table = (name: string): SampleTable => {
    const found = tables.find((each) => each.name === name);
    if (!found) throw new RangeError(`plantFaults: there is no table ${name}`);
    return found;
  };
  const drafts = [
    faultyChildren(table("Children"), last),
    faultyObservations(table("Observations"), last),
    faultySkills(table("Skills")),
    faultyReferrals(table("Referrals"), last),
    faultySigns(table("Signs"), last),
    faultyRatings(table("Ratings"), last),
    wideSheet(last),
  ];
  return { sheets: drafts.map(sheetOfDraft), faults: drafts.flatMap(faultsOfDraft) };
}
