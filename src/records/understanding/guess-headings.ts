import { headingKey } from "../cells/words";
import { GROUP, SHEET_NAME, type SheetKind } from "../corrections/settled";
import { type HeaderCell, matchHeadings } from "../headings/headings";
import { neverGroups } from "../headings/can-group";
import { LIKELY, plainWords } from "../headings/likely";
import type { ColumnSpec, TableSpec } from "../tables/spec";
import { specOfKind } from "./kinds";
import { skillPairs } from "./skill-pairs";
import type { ContentKind, HeadingSeen } from "./understanding";

/**
 * What the headings of a sheet of one kind are taken for: a column's own name and its synonyms without doubt, where the cells
 * can be such; what only looks like one, with doubt; in a grid every column of results or dates is a skill.
 *
 * @param known - ids and labels of skills, by `headingKey`
 */
export function guessHeadings(
  is: SheetKind,
  headings: readonly HeadingSeen[],
  known: readonly string[],
): HeadingSeen[] {
  const spec = specOfKind(is);
  if (!spec) return headings.map((each) => ({ ...each, means: null, skill: null, doubtful: false }));
  const pairs = is === "grid" ? skillPairs(headings) : new Map<HeadingSeen, HeadingSeen>();
  const apart = headings.filter((each) => !pairs.has(each));
  const taken = new Map<HeadingSeen, { means: string; doubtful: boolean }>();
  const left = (column: ColumnSpec) => ![...taken.values()].some(({ means }) => means === column.heading);
  for (const [column, heading] of byName(spec, apart)) taken.set(heading, { means: column.heading, doubtful: false });
  for (const column of spec.columns.filter(left)) {
    const free = apart.filter((each) => !taken.has(each) && each.heading !== SHEET_NAME && !isKnown(each, known));
    const likely = likeliest(spec, column, free);
    if (likely) taken.set(likely, { means: column.heading, doubtful: true });
  }
  if (is === "referrals") whyAsArea(taken);
  if (is === "observations") onlyResults(taken, apart);
  const skills = new Set(known);
  return headings.map((each) => {
    const pair = pairs.get(each);
    if (pair) return pair;
    const own = taken.get(each);
    if (own) return { ...each, means: own.means, skill: null, doubtful: own.doubtful };
    return is === "grid" ? skillOrNot(each, skills) : groupOrNot(is, each);
  });
}

/** Where no heading names the result, the only column left that holds results: taken for it, with doubt. */
function onlyResults(taken: Map<HeadingSeen, { means: string; doubtful: boolean }>, all: readonly HeadingSeen[]): void {
  if ([...taken.values()].some(({ means }) => means === "Result")) return;
  const own = all.filter((each) => !taken.has(each) && ["results", "yes or no"].includes(each.content));
  if (own.length === 1) taken.set(own[0] as HeadingSeen, { means: "Result", doubtful: true });
}

/** Where no heading names the area, a heading such as "Why" with a few short words says it: taken for it, with doubt. */
function whyAsArea(taken: Map<HeadingSeen, { means: string; doubtful: boolean }>): void {
  if ([...taken.values()].some(({ means }) => means === "Area")) return;
  const why = [...taken].find(([, { means }]) => means === "Reason")?.[0];
  if (why && why.content !== "text") taken.set(why, { means: "Area", doubtful: true });
}

/** The heading that looks most like one of a column and whose cells can be such; null where none does. */
export function likeliest(spec: TableSpec, column: ColumnSpec, free: readonly HeadingSeen[]): HeadingSeen | null {
  const likely = LIKELY[spec.name][column.key];
  if (!likely) return null;
  return free.find((each) => canBe(column, each.content) && likely.pattern.test(plainWords(each.heading))) ?? null;
}

/** Whether cells of a kind can be those of a column. Nothing below a heading speaks against nothing. */
export function canBe(column: ColumnSpec, content: ContentKind): boolean {
  if (content === "nothing") return true;
  if (column.kind === "date") return content === "dates";
  const isNumeric = content === "numbers" || content === "scores";
  if (column.kind === "number" || column.kind === "weeks") return isNumeric;
  if (column.kind === "gestation") return content !== "dates" && content !== "results" && content !== "yes or no";
  if (column.kind === "id") return content !== "dates" && content !== "results";
  return content !== "dates";
}

function byName(spec: TableSpec, headings: readonly HeadingSeen[]): [ColumnSpec, HeadingSeen][] {
  const cells = headings.map((each, i): HeaderCell => {
    const own = headingKey(each.heading);
    const keys = each.above === "" ? [own] : [headingKey(`${each.above} ${each.heading}`), own];
    return { row: 0, column: i, text: each.heading, keys };
  });
  const { columns } = matchHeadings(spec, cells);
  return spec.columns.flatMap((column): [ColumnSpec, HeadingSeen][] => {
    const at = columns.get(column.key);
    const heading = at === undefined ? undefined : headings[at];
    return heading && canBe(column, heading.content) ? [[column, heading]] : [];
  });
}

function isKnown({ heading }: HeadingSeen, known: readonly string[]): boolean {
  return known.includes(headingKey(heading));
}

function skillOrNot(each: HeadingSeen, known: ReadonlySet<string>): HeadingSeen {
  const isSkill = known.has(headingKey(each.heading));
  if (!isSkill && (isOfBirth(each) || (each.content === "few words" && isWho(each))))
    return { ...each, means: null, skill: null, doubtful: false };
  const holds = ["results", "dates", "yes or no", "few words", "scores"].includes(each.content);
  const skill = isSkill || holds ? each.heading : null;
  const isOdd = each.content === "few words" || each.content === "scores";
  return { ...each, means: null, skill, doubtful: skill !== null && !isSkill && isOdd };
}

/** A column of how early the child was born: no skill, though its numbers are small. */
function isOfBirth({ heading }: HeadingSeen): boolean {
  const words = plainWords(heading);
  const { gestation, weeksEarly } = LIKELY.Children;
  return [gestation, weeksEarly].some((each) => each?.pattern.test(words));
}

/** A column of who looked, or of where: no skill, though its words are few. */
function isWho({ heading }: HeadingSeen): boolean {
  const words = plainWords(heading);
  const { observer } = LIKELY.Observations;
  const { site, therapist } = LIKELY.Children;
  return neverGroups(heading) || [observer, site, therapist].some((each) => each?.pattern.test(words));
}

function groupOrNot(is: SheetKind, each: HeadingSeen): HeadingSeen {
  const isFew = ["few words", "yes or no", "scores"].includes(each.content);
  const canGroup = is === "children" && isFew && !neverGroups(each.heading);
  return { ...each, means: canGroup ? GROUP : null, skill: null, doubtful: false };
}
