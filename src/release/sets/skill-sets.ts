import { type Day, isoOf } from "../../age/day";
import { BOX_COLUMNS } from "../draft/box-columns";
import type { Drafting } from "../draft/drafting";
import { ALL_AGES, type KeyParts } from "../draft/keys";
import { GONE, KNOWN, type SkillStanding } from "./skill-standing";

/** Where the counts of one day are cut. */
export interface Cuts {
  readonly day: Day;
  readonly edges: readonly number[];
}

/** A count of a skill, as a set of standings; `name` is the same for the same set of another skill. */
export interface SkillSet {
  readonly name: string;
  readonly is: (standing: SkillStanding) => boolean;
}

type Tags = Drafting["tags"];

/** Counts of boxes of those who stand so, and of what is known of everybody by the day; null where a key says something else. */
export function skillSetOf(
  parts: KeyParts,
  cuts: Cuts,
  stands: (stands: number) => boolean,
  tags: Tags,
): SkillSet | null {
  const { population, when, ages, column } = parts;
  const name = `${population} ${when} ${ages} ${column}`;
  if (population === "ever followed") {
    const known = when === isoOf(cuts.day) ? knownSet(parts, cuts, tags) : null;
    return known === null ? null : { name, is: known };
  }
  const box = BOX_COLUMNS.find(({ key }) => key === column);
  const bands = bandsOf(ages, cuts.edges);
  if (box === undefined || bands === null) return null;
  const is = (each: SkillStanding) =>
    stands(each.stands) && each.band >= bands[0] && each.band < bands[1] && box.boxes.includes(each.box);
  return { name, is };
}

function bandsOf(ages: string, edges: readonly number[]): readonly [from: number, to: number] | null {
  const [from = "?", to = "?"] = ages.split("..");
  const at = (edge: string, open: number) => (edge === "" ? open : edges.indexOf(Number(edge)) + 1 || NaN);
  const span = [at(from, -Infinity), at(to, Infinity)] as const;
  return span.some(Number.isNaN) ? null : span;
}

/** Met, not met or not known at an edge, as reached-by-age counts it; and what age-when-met counts. */
function knownSet({ ages, column, tag = "" }: KeyParts, { edges }: Cuts, tags: Tags): SkillSet["is"] | null {
  if (tag !== tags.attained) return null;
  if (ages === ALL_AGES) return EVER[column] ?? null;
  const at = (edge: string) => edges.indexOf(Number(edge));
  if (ages.startsWith("at ")) return standingAt(column, at(ages.slice(3)));
  const [from = "", to = ""] = ages.split("..");
  const [low, high] = [from === "" ? null : at(from), to === "" ? null : at(to)];
  if (low === -1 || high === -1) return null;
  if (column === "met")
    return (each) => (high === null ? hasMet(each) : metBy(each, high)) && !(low !== null && metBy(each, low));
  if (column !== "notMet" || low === null) return null;
  return (each) => withoutAt(each, low) && !(high !== null && withoutAt(each, high));
}

function standingAt(column: string, edge: number): SkillSet["is"] | null {
  if (edge < 0) return null;
  if (column === "notKnown") return (each) => isEver(each) && !metBy(each, edge) && !withoutAt(each, edge);
  if (column === "notYet") return (each) => isEver(each) && !metBy(each, edge);
  return column === "possible" ? (each) => isEver(each) && !withoutAt(each, edge) : null;
}

const EVER: Readonly<Record<string, SkillSet["is"]>> = {
  lookedAt: ({ known }) => known > KNOWN.unseen,
  hadAtFirstLook: ({ known }) => known === KNOWN.had,
  interval: ({ known }) => known === KNOWN.interval,
  neverMet: ({ known }) => known === KNOWN.never,
  met: (each) => hasMet(each),
  neverLookedAt: ({ known }) => known === KNOWN.unseen,
};

function isEver({ known }: SkillStanding): boolean {
  return known !== GONE;
}

function hasMet({ known }: SkillStanding): boolean {
  return known === KNOWN.had || known === KNOWN.interval;
}

function metBy(each: SkillStanding, edge: number): boolean {
  return hasMet(each) && each.met <= edge;
}

function withoutAt(each: SkillStanding, edge: number): boolean {
  return each.known > KNOWN.unseen && each.without > edge && !metBy(each, edge);
}
