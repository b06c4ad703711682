import type { SettingName } from "../../src/settings/settings";
import { counted, plural } from "../../src/words/numbers";
import type { PlanReason } from "../../src/tables/caseload/plan-item";
import { MOST_VISITS_IN_PLAN, visitsAsked } from "../../src/tables/caseload/plan-visits";
import type { Receipt } from "../../src/workbook/host";
import type { Told } from "../state/pane-state";
import { placeOfSetting } from "./settings";
import type { CaseloadListed, PageMade, VisitToMake } from "../worker/caseload/listed";
import { noted } from "./report";

/** The title of the place: the finding, as a sentence. */
export function caseloadTitle(listed: CaseloadListed | null): string {
  if (listed === null) return "See one therapist’s children in order";
  return listed.title ?? `No child is in the program on ${listed.label}`;
}

export const CASELOAD_ABOUT =
  "Children come in order of urgency, each with the reason and the next step. The order says what comes first and ranks nobody; what follows is for the child’s clinician to decide.";

export const INTERNAL_LIST = "Internal: each line is about a single child. Keep it inside the program.";

/** What an empty list means, and what to do. */
export function nobodyInWords({ therapist, label }: CaseloadListed): string {
  const whose = therapist === "" ? "No child is in the program" : `No child of ${therapist} is in the program`;
  return `${whose} on ${label}. Choose another date, or another therapist; Records lists which rows of Children are not used.`;
}

export const OLD_LIST =
  "A date, a setting or a correction changed since. List the children again to see what it changes.";

export const CHOOSE_THERAPIST = "Choose a therapist, then list the children.";

/** Why there is no therapist to choose; null where there is. */
export function noChoiceInWords(therapists: readonly string[] | null): string | null {
  if (therapists === null) return "The workbook has no column Therapist: the list has every child in the program.";
  if (therapists.length > 1) return null;
  const [only = ""] = therapists;
  return only === ""
    ? "No row has a therapist: the list has every child in the program."
    : `${only} is the only therapist in the records.`;
}

export function therapistLabel(code: string): string {
  return code === "" ? "No therapist recorded" : code;
}

export const VISITS_HINT = "Each to one child, with room for 8 checks. Left empty: 12.";

/** What is wrong with the number of visits; undefined where it is right. */
export function visitsMessage(text: string): string | undefined {
  return visitsAsked(text) === null
    ? `Visits to plan for: must be a whole number from 1 to ${counted(MOST_VISITS_IN_PLAN)}.`
    : undefined;
}

/** Why the children cannot be listed: fields that stand elsewhere are named with their message. */
export function faultsInWords(messages: readonly (readonly [SettingName, string])[]): string {
  const elsewhere = messages.find(([name]) => name !== "asOf");
  if (elsewhere === undefined) return "A field needs checking before the children can be listed.";
  return `A field of ${placeOfSetting(elsewhere[0])} needs checking before the children can be listed. ${elsewhere[1]}`;
}

export function toldOfList(listed: CaseloadListed): Told {
  if (listed.children === 0) return { tone: "stopped", text: nobodyInWords(listed) };
  return { tone: "done", text: `Listed: ${plural(listed.children, "child", "children")}, the most urgent first.` };
}

/** How a receipt names the run: in Excel it is kept with the sheet, so it names nobody. */
export function pageLabel({ subject, label }: PageMade): string {
  return `${subject.kind === "child" ? "Child page" : "Caseload page"} as of ${label}`;
}

export function toldOfPage({ sheets, note }: Receipt): Told {
  return {
    tone: "done",
    text: `The page was added after your own sheets as “${sheets.join(", ")}”; nothing else was changed. It is about single children: print it for those it is meant for, or keep it with the records.${noted(note)}`,
  };
}

export function moreChildren(hidden: number): string {
  return `Show more: ${plural(hidden, "child", "children")} not shown yet`;
}

/** Where there are more children than the pane lists. */
export function cutInWords({ children, lines }: CaseloadListed): string {
  return `The first ${counted(lines.length)} of ${counted(children)} children are listed here. The table Caseload of Quarter has all of them.`;
}

export function planInWords(visits: readonly VisitToMake[]): string {
  if (visits.length === 0) return "Nothing needs another check before the next report.";
  return `${plural(visits.length, "visit", "visits")}, each to one child: safety first, then what the next report would otherwise not know. What the family asks comes before any plan.`;
}

const WHY: Readonly<Record<PlanReason, string>> = {
  sign: "Sign without follow-up, to talk about with the child’s clinician first",
  lost: "Recorded as lost: talk with the child’s clinician, and check whether it is there",
  "to confirm": "Possible loss, to confirm: check again, and talk with the child’s clinician",
  "past window": "Past their windows: check again, and talk with the child’s clinician",
  "not known": "Not checked since their windows closed",
  "different results": "Different results on one day: check together",
  "not met": "Not met, and in need of a recheck by the next report",
  "not assessed": "Never checked, and near their windows",
};

const WHY_SHORT: Readonly<Record<PlanReason, string>> = {
  sign: "sign without follow-up",
  lost: "lost",
  "to confirm": "possible loss, to confirm",
  "past window": "past the window",
  "not known": "not checked since the window closed",
  "different results": "different results",
  "not met": "not met",
  "not assessed": "never checked",
};

/** `possible loss, to confirm (1); not met (7)`. */
export function visitInShort({ looks }: VisitToMake): string {
  return looks.map(({ why, names }) => `${WHY_SHORT[why]} (${counted(names.length)})`).join("; ");
}

/** `Not met, and in need of a recheck by the next report: Walks alone; Stacks two cubes.` */
export function looksInWords({ why, names }: VisitToMake["looks"][number]): string {
  return `${WHY[why]}: ${names.join("; ")}.`;
}
