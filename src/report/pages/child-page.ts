import { dayInWords } from "../../words/dates";
import { addMonths } from "../../age/months";
import type { Concerns } from "../../tables/caseload/concerns";
import type { TableContext } from "../../tables/context";
import type { SheetOut } from "../../workbook/sheets";
import { listed, plural } from "../../words/numbers";
import { areaRows, pastSkills, uncheckedLines } from "./child-areas";
import { concernLines } from "./child-concerns";
import { type ChildFacts, childFacts, type Room } from "./child-facts";
import { newLines, newSkills } from "./child-new";
import { questionLines } from "./child-questions";
import { nextSkills, tryLines } from "./child-try";
import { PageDraft } from "./page-draft";
import { agesInWords } from "./page-words";

/** One page that the family takes along to the next routine visit with the child's clinician. */
export function childPage(context: TableContext, concerns: Concerns): SheetOut {
  const page = firstThatFits(ROOMS.map((room) => () => drafted(childFacts(context, concerns, room))));
  return page.finished("For the family and the child's clinician", context.asOf);
}

/** From the fullest page to the shortest: long lists give way before the print becomes small. */
const ROOMS: readonly Room[] = [
  { newSkills: 6, seenPerArea: 3, notYetPerArea: 3, ideas: 5 },
  { newSkills: 5, seenPerArea: 2, notYetPerArea: 3, ideas: 4 },
  { newSkills: 4, seenPerArea: 2, notYetPerArea: 2, ideas: 4 },
  { newSkills: 3, seenPerArea: 1, notYetPerArea: 2, ideas: 3 },
  { newSkills: 1, seenPerArea: 1, notYetPerArea: 1, ideas: 2 },
];
/** A Letter page between its margins is 698 points tall: this much is printed at four fifths of its size. */
const FITTING_POINTS = 870;

function firstThatFits(pages: readonly (() => PageDraft)[]): PageDraft {
  let page: PageDraft | null = null;
  for (const make of pages) {
    page = make();
    if (page.heightPoints <= FITTING_POINTS) break;
  }
  return page as PageDraft;
}

function drafted(facts: ChildFacts): PageDraft {
  const page = new PageDraft("Child page (family)");
  page.title(titleOf(facts));
  page.lead(`Name: ________________________________     Code: ${facts.id}`);
  page.lead(leadOf(facts));
  page.section("What is new", newLines(facts));
  page.section("Losses and signs", concernLines(facts));
  page.columns(
    "Each area now",
    ["Seen", "Checked, not yet"],
    areaRows(facts).map(({ area, seen, notYet }) => [area, seen, notYet]),
  );
  page.section("Not checked since", uncheckedLines(facts));
  page.section("Try together", tryLines(facts));
  page.section("To ask", questionLines(facts));
  page.section("Please note", [CAUTION]);
  page.foot(sources(facts));
  return page;
}

function titleOf({ next, concerns, ...facts }: ChildFacts): string {
  const visit = next === null ? "the next visit" : `the ${next.months}-month visit`;
  return `For ${visit}: ${findingOf({ next, concerns, ...facts })}`;
}

/** What to talk about comes before what is new: good news never stands alone over a worry. */
function findingOf(facts: ChildFacts): string {
  const talk = toTalkAbout(facts.concerns);
  const count = newSkills(facts).length;
  const told = count === 0 ? null : `${plural(count, "new skill", "new skills")} to tell about`;
  return [talk, told].filter((each) => each !== null).join(", ") || "what the records say so far";
}

function toTalkAbout({ lost, toConfirm, openSigns, past, due, unchecked }: Concerns): string | null {
  const now = [
    ...(lost.length > 0 ? [plural(lost.length, "loss", "losses")] : []),
    ...(toConfirm.length > 0 ? [plural(toConfirm.length, "possible loss", "possible losses")] : []),
    ...(openSigns.length > 0 ? [plural(openSigns.length, "sign", "signs")] : []),
  ];
  if (now.length > 0) return `${listed(now)} to talk about now`;
  if (past.length > 0) return `${plural(past.length, "skill", "skills")} to talk about`;
  return unchecked || due.length > 0 ? "a check to ask for" : null;
}

function leadOf(facts: ChildFacts): string {
  const { context, clock, next } = facts;
  const visit = next === null ? "" : ` The ${next.months}-month visit is due around ${dayInWords(next.day)}.`;
  return `On ${dayInWords(context.asOf)}, your child is ${agesInWords(clock, context.asOf)}.${stopInWords(facts)}${visit}`;
}

const MONTHS_NEAR_STOP = 3;

/** The day on which age is no longer counted from the due date, where it is near. */
function stopInWords({ context: { asOf }, clock }: ChildFacts): string {
  if (clock.correctedBirth === clock.birth) return "";
  const near = clock.stops <= addMonths(asOf, MONTHS_NEAR_STOP) && clock.stops > addMonths(asOf, -MONTHS_NEAR_STOP);
  if (!near) return "";
  return ` ${clock.stops > asOf ? "From" : "Since"} ${dayInWords(clock.stops)}, age is counted from birth.`;
}

const CAUTION =
  "This page is not a diagnosis. Your child's clinician and local rules decide what is done. The program saw your child only on some days. What you see at home counts too.";

/** Where the ages of the skills named on the page come from. */
function sources(facts: ChildFacts): string[] {
  const named = [...pastSkills(facts), ...nextSkills(facts)];
  const bases = [...new Set(named.map(({ skill }) => skill.basis.replace(/:.*$/, "")).filter((basis) => basis !== ""))];
  return bases.length === 0 ? [] : [`Ages are from: ${listed(bases)}.`];
}
