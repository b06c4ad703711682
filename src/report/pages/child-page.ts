import { ageInWords, correctedAgeInWords } from "../../age/age-in-words";
import { dayInWords } from "../../words/dates";
import type { Concerns } from "../../tables/caseload/concerns";
import type { TableContext } from "../../tables/context";
import type { SheetOut } from "../../workbook/sheets";
import { plural } from "../../words/numbers";
import { areaLines, namedNotYet } from "./child-areas";
import { concernLines } from "./child-concerns";
import { type ChildFacts, childFacts, type Room } from "./child-facts";
import { newLines, newSkills } from "./child-new";
import { questionLines } from "./child-questions";
import { openSkills, tryLines } from "./child-try";
import { PageDraft } from "./page-draft";

/** One page that the family takes along to the next routine visit with the child's clinician. */
export function childPage(context: TableContext, concerns: Concerns): SheetOut {
  const page = firstThatFits(ROOMS.map((room) => () => drafted(childFacts(context, concerns, room))));
  return page.finished("one child's records, for the family and the child's clinician only", context.asOf);
}

/** From the fullest page to the shortest: long lists give way before the print becomes small. */
const ROOMS: readonly Room[] = [
  { newSkills: 5, notYetPerArea: 2, ideas: 5 },
  { newSkills: 4, notYetPerArea: 2, ideas: 3 },
  { newSkills: 4, notYetPerArea: 1, ideas: 3 },
  { newSkills: 2, notYetPerArea: 1, ideas: 2 },
  { newSkills: 1, notYetPerArea: 1, ideas: 1 },
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
  const page = new PageDraft("Child page (internal)");
  page.title(titleOf(facts));
  page.lead(leadOf(facts));
  page.section("What is new", newLines(facts));
  page.section("Losses and signs", concernLines(facts));
  page.namedLines("Where each area stands", areaLines(facts));
  page.section("To try together", tryLines(facts));
  page.section("To ask", questionLines(facts));
  page.section("Please keep in mind", cautions(facts));
  return page;
}

function titleOf(facts: ChildFacts): string {
  const visit = facts.next === null ? "the next visit" : `the ${facts.next.months}-month visit`;
  return `For ${visit} of ${facts.id}: ${findingOf(facts)}`;
}

function findingOf(facts: ChildFacts): string {
  const { lost, toConfirm, openSigns } = facts.concerns;
  if (lost.length > 0) return `${plural(lost.length, "loss", "losses")} to talk about now`;
  if (toConfirm.length > 0) return `${plural(toConfirm.length, "loss", "losses")} to confirm and to talk about now`;
  if (openSigns.length > 0) return `${plural(openSigns.length, "sign", "signs")} to talk about now`;
  const count = newSkills(facts).length;
  return count === 0 ? "what the records say so far" : `${plural(count, "new skill", "new skills")} to tell about`;
}

function leadOf({ context: { asOf }, clock, next }: ChildFacts): string {
  const corrected = correctedAgeInWords(clock, asOf);
  const age = `your child is ${ageInWords(clock.birth, asOf)} old${corrected === null ? "" : ` (${corrected}; corrected ages count from the due date)`}`;
  const screening = next?.screening ? ", an age at which general screening is recommended" : "";
  const visit = next === null ? "" : ` The age of ${next.months} months comes on ${dayInWords(next.day)}${screening}.`;
  return `For the family to take along to the child's clinician. On ${dayInWords(asOf)} ${age}.${visit}`;
}

function cautions(facts: ChildFacts): string[] {
  return [
    "Nothing here is a diagnosis, and nothing here says how your child will go on. Your child's clinician and local rules decide what is done.",
    "The page tells what the program saw on the days it looked. Between two looks nobody knows the day, and what was not looked for is not on it.",
    `A window is the span of ages at which the children of its source came to do a skill. Where it holds for 75 in 100 of them, up to 1 child in 4 is past it and that is nothing unusual; where for 99 in 100, about 1 in 100 is. ${sources(facts)}`,
  ];
}

/** Where the windows of the skills named on the page come from. */
function sources(facts: ChildFacts): string {
  const named = [...namedNotYet(facts), ...openSkills(facts)];
  const bases = [...new Set(named.map(({ skill }) => skill.basis).filter((basis) => basis !== ""))];
  return bases.length === 0 ? "" : `Windows here: ${bases.join("; ")}.`;
}
