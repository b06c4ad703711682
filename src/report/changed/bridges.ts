import type { Table } from "../../tables/table";
import { MEASURES, type Part, PARTS } from "../../tables/what-changed/parts";
import { counted, listed } from "../../words/numbers";
import { ALL_SKILLS, type Row, readTable, type TableReader } from "../sheets/read-table";

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

/** The headline figures of what-changed: the children, all skill checks up to date, those met, and those met in each area. */
export function bridgesOf(table: Table): Bridge[] {
  const read = readTable(table);
  const areas = [...new Set(table.rows.map((row) => read.text(row, "area")))];
  const all = (measure: string) =>
    table.rows.filter((row) => read.text(row, "skill") === ALL_SKILLS && read.text(row, "measure") === measure);
  const met = all("met");
  return [
    bridge(read, "children in the program", oneSkill(table, read)),
    bridge(read, "up-to-date skill checks", all("assessed")),
    bridge(read, "skill checks met", met),
    ...areas.map((area) =>
      bridge(
        read,
        `skill checks met in ${area}`,
        met.filter((row) => read.text(row, "area") === area),
      ),
    ),
  ].filter(({ earlier, later }) => earlier + later > 0);
}

/** Every child in the program has a row of every skill: those of a skill that both runs have add up to the children. */
function oneSkill(table: Table, read: TableReader): readonly Row[] {
  const rows = table.rows.filter(
    (row) => read.text(row, "measure") === MEASURES[0] && read.text(row, "skill") !== ALL_SKILLS,
  );
  const skills = [...new Set(rows.map((row) => read.text(row, "skill")))].map((skill) => {
    const own = rows.filter((row) => read.text(row, "skill") === skill);
    return { own, both: Math.min(read.sum(own, "earlier"), read.sum(own, "later")) };
  });
  return skills.sort((a, b) => b.both - a.both)[0]?.own ?? [];
}

function bridge(read: TableReader, subject: string, rows: readonly Row[]): Bridge {
  const parts = PARTS.map((part) => ({ part, change: read.sum(rows, part) })).filter(({ change }) => change !== 0);
  const isFromReport = rows.some((row) => read.number(row, "enteredLate") === null);
  return { subject, earlier: read.sum(rows, "earlier"), parts, later: read.sum(rows, "later"), isFromReport };
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
