import type { ChangedCell, Changes } from "../../tables/what-changed/changed-cell";
import { type Measure, type Part, PARTS } from "../../tables/what-changed/parts";
import { counted, listed } from "../../words/numbers";
import { ALL_SKILLS } from "../sheets/read-table";

/** One headline figure, earlier and later, and the parts of its change that are not nothing. */
export interface Bridge {
  /** What is counted: `children in the program`. */
  readonly subject: string;
  readonly earlier: number;
  readonly parts: readonly { readonly part: Part; readonly change: number }[];
  readonly later: number;
  /** True where a report alone was at hand: the part "corrected" is then all that was entered late, corrected or removed. */
  readonly isFromReport: boolean;
}

/** The headline figures, over all groups and ages: the children, skill checks up to date, those met, and those met in each area. */
export function bridgesOf({ whole, isFromReport }: Changes): Bridge[] {
  const overSkills = whole.filter(({ skill }) => skill === ALL_SKILLS);
  const areas = [...new Set(overSkills.map(({ area }) => area))];
  const of = (measure: Measure) => overSkills.filter((each) => each.measure === measure);
  const bridge = (subject: string, cells: readonly ChangedCell[]) => bridgeOver(subject, cells, isFromReport);
  return [
    bridge("children in the program", oneSkill(whole)),
    bridge("up-to-date skill checks", of("assessed")),
    bridge("skill checks met", of("met")),
    ...areas.map((area) =>
      bridge(
        `skill checks met in ${area}`,
        of("met").filter((each) => each.area === area),
      ),
    ),
  ].filter(({ earlier, later }) => earlier + later > 0);
}

/** Every child in the program has its place in every skill: a skill that both runs have counts the children. */
function oneSkill(whole: readonly ChangedCell[]): readonly ChangedCell[] {
  const skills = whole.filter(({ skill, measure }) => skill !== ALL_SKILLS && measure === "children");
  const both = ({ earlier, later }: ChangedCell) => Math.min(earlier, later);
  return [...skills].sort((a, b) => both(b) - both(a)).slice(0, 1);
}

function bridgeOver(subject: string, cells: readonly ChangedCell[], isFromReport: boolean): Bridge {
  const sum = (valueOf: (cell: ChangedCell) => number | null) =>
    cells.reduce((total, cell) => total + (valueOf(cell) ?? 0), 0);
  const parts = PARTS.map((part, at) => ({ part, change: sum(({ parts: own }) => own[at] ?? null) }));
  return {
    subject,
    earlier: sum(({ earlier }) => earlier),
    parts: parts.filter(({ change }) => change !== 0),
    later: sum(({ later }) => later),
    isFromReport,
  };
}

/** `62 children in the program became 58: 5 joined, 7 left, 3 grew out of the group and 1 met it since`. */
export function bridgeInWords({ subject, earlier, parts, later, isFromReport }: Bridge): string {
  const verb = earlier === later ? "stayed" : "became";
  if (parts.length === 0) return `${counted(later)} ${subject}, as before`;
  const said = parts.map(({ part, change }) => partInWords(part, change, isFromReport));
  return `${counted(earlier)} ${subject} ${verb} ${counted(later)}: ${listed(said)}`;
}

/** What one part did: `7 left`. */
export function partInWords(part: Part, change: number, isFromReport: boolean): string {
  const words = part === "corrected" && isFromReport ? TOGETHER : WORDS[part];
  return `${counted(Math.abs(change))} ${change > 0 ? words.more : words.fewer}`;
}

/** The heading of a part on a chart. */
export function partHeading(part: Part, isFromReport: boolean): string {
  return part === "corrected" && isFromReport ? "Entered late, corrected or removed" : WORDS[part].heading;
}

interface PartWords {
  readonly heading: string;
  readonly more: string;
  readonly fewer: string;
}

const TOGETHER: PartWords = {
  heading: "",
  more: "more by rows entered late, corrected or removed",
  fewer: "fewer by rows entered late, corrected or removed",
};

const WORDS: Readonly<Record<Part, PartWords>> = {
  enteredLate: { heading: "Entered late", more: "entered late", fewer: "fewer by what was entered late" },
  corrected: { heading: "Corrected", more: "more by corrections", fewer: "fewer by corrections" },
  removed: { heading: "Removed", more: "more by rows removed", fewer: "removed" },
  definition: {
    heading: "Definition",
    more: "more by other settings or skills",
    fewer: "fewer by other settings or skills",
  },
  joined: { heading: "Joined", more: "joined", fewer: "joined" },
  left: { heading: "Left", more: "left", fewer: "left" },
  grewIn: { heading: "Grew into the group", more: "grew into the group", fewer: "grew into the group" },
  grewOut: { heading: "Grew out of the group", more: "grew out of the group", fewer: "grew out of the group" },
  metSince: { heading: "Met since", more: "met since", fewer: "met since" },
  lost: { heading: "Lost", more: "checked and found lost", fewer: "lost" },
  needsRecheck: { heading: "Needs a recheck", more: "needing a recheck", fewer: "need a recheck now" },
  checkedAgain: { heading: "Checked again", more: "checked again", fewer: "checked again" },
};
