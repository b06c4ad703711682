import { headingKey } from "../cells/words";
import type { SheetKind } from "../corrections/settled";
import { specNamed } from "../headings/table-match";
import { guessHeadings } from "./guess-headings";
import { kindOfTable, specOfKind } from "./kinds";
import type { HeadingSeen, SheetTaken } from "./understanding";

export type GuessedKind = Pick<SheetTaken, "is" | "why" | "doubtful" | "headings">;

/** Kinds in the order of what they need: a sheet that fits two is the one that needs more. */
const ORDER: readonly SheetKind[] = ["observations", "ratings", "signs", "referrals", "children", "grid", "skills"];
const FEWEST_SKILLS = 2;
/** Beside the columns of children, so many columns of results or dates are skills, though no table names them. */
const FEWEST_UNKNOWN = 3;

/**
 * What a sheet with these headings is: one kind, or two where children and their skills stand on one sheet; none where its
 * headings fit nothing.
 *
 * @param sure - the kind, where its headings leave no doubt
 */
export function guessKind(
  seen: readonly HeadingSeen[],
  known: readonly string[],
  sheetName: string,
  sure?: SheetKind,
): GuessedKind[] {
  const fits = (sure ? [sure] : ORDER).map((is) => ({ is, headings: guessHeadings(is, seen, known) })).filter(isWhole);
  const best = fits.sort((a, b) => score(b, sheetName) - score(a, sheetName))[0];
  if (!best) return [];
  const first = { ...best, why: whyOf(best, sure !== undefined), doubtful: sure === undefined && !isSure(best, known) };
  return best.is === "children"
    ? withGrid(first, seen, known)
    : best.is === "observations"
      ? withChildren(first, seen)
      : [first];
}

interface Candidate {
  readonly is: SheetKind;
  readonly headings: readonly HeadingSeen[];
}

function isWhole({ is, headings }: Candidate): boolean {
  const needed = (specOfKind(is)?.columns ?? []).filter((column) => column.required);
  const has = needed.every((column) => headings.some(({ means }) => means === column.heading));
  return has && (is !== "grid" || skillsOf(headings).length >= FEWEST_SKILLS);
}

function skillsOf(headings: readonly HeadingSeen[]): HeadingSeen[] {
  return headings.filter(({ skill }) => skill !== null);
}

function score({ is, headings }: Candidate, sheetName: string): number {
  const named = specNamed(sheetName);
  const hint = named && kindOfTable(named.name) === is ? 4 : 0;
  const needed = (specOfKind(is)?.columns ?? []).filter(({ required }) => required).length;
  const read = headings.filter(({ means }) => means !== null && means !== "Group");
  const points = read.reduce((sum, { doubtful }) => sum + (doubtful ? 1 : 2), 0);
  return points + needed + hint + (is === "grid" ? skillsOf(headings).length / 4 : 0);
}

function isSure({ is, headings }: Candidate, known: readonly string[]): boolean {
  const skills = skillsOf(headings);
  const named = skills.filter(({ heading }) => known.includes(headingKey(heading)));
  return (
    is === "grid" && known.length > 0 && named.length * 2 > skills.length && headings.every(({ doubtful }) => !doubtful)
  );
}

function whyOf({ is, headings }: Candidate, isNamed: boolean): string {
  const read = headings.filter(({ means }) => means !== null && means !== "Group").map(({ heading }) => heading);
  const names = read.slice(0, 4).join(", ");
  if (is === "grid")
    return `It has ${names || "a child"} and ${skillsOf(headings).length} columns of results or dates.`;
  return isNamed ? `It has the headings ${names}.` : `Its headings ${names} are like those of this table.`;
}

/** Skills beside the columns of Children: the same rows are a grid too. */
function withGrid(first: GuessedKind, seen: readonly HeadingSeen[], known: readonly string[]): GuessedKind[] {
  const own = new Set(
    first.headings.filter(({ means }) => means !== null && means !== "Group").map(({ cell }) => cell),
  );
  const child = first.headings.find(({ means }) => means === "Child");
  const rest = seen.filter(({ cell }) => cell === child?.cell || !own.has(cell));
  const grid = guessHeadings("grid", rest, known);
  const isKnown = ({ heading }: HeadingSeen) => known.includes(headingKey(heading));
  const many = (["dates", "scores"] as const).filter(
    (kind) => skillsOf(grid).filter(({ content }) => content === kind).length >= FEWEST_UNKNOWN,
  );
  const skills = skillsOf(grid).filter(
    (each) => isKnown(each) || each.content === "results" || many.some((kind) => kind === each.content),
  );
  const enough = skills.some(isKnown) || skills.length >= FEWEST_UNKNOWN;
  if (!enough) return [first];
  const columns = new Set(skills.map(({ cell }) => cell));
  const kept = grid.filter(({ cell, means }) => columns.has(cell) || means !== null);
  const children = first.headings.map((each) => (columns.has(each.cell) ? { ...each, means: null } : each));
  const candidate = { is: "grid" as const, headings: kept };
  const part = { ...candidate, why: whyOf(candidate, false), doubtful: !isSure(candidate, known) };
  return [{ ...first, headings: children.filter(({ cell }) => !columns.has(cell)) }, part];
}

/** Birth dates beside the checks: the same rows say who the children are. */
function withChildren(first: GuessedKind, seen: readonly HeadingSeen[]): GuessedKind[] {
  const own = new Set(
    first.headings.filter(({ means }) => means !== null && means !== "Child").map(({ cell }) => cell),
  );
  const children = guessHeadings(
    "children",
    seen.filter(({ cell }) => !own.has(cell)),
    [],
  );
  const candidate = { is: "children" as const, headings: children };
  if (!isWhole(candidate)) return [first];
  const used = new Set(children.filter(({ means }) => means !== null && means !== "Child").map(({ cell }) => cell));
  return [
    { ...candidate, why: whyOf(candidate, true), doubtful: true },
    { ...first, headings: first.headings.filter(({ cell }) => !used.has(cell)) },
  ];
}
