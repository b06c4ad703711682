import { headingKey, keyOf } from "../cells/words";
import type { SheetDecision } from "../corrections/decisions";
import { type HeadingTaken, isVirtual } from "../corrections/settled";
import type { SheetIn, WorkbookIn } from "../../workbook/workbook";
import { headerCells, segmentsOf } from "./header-cells";
import type { HeaderCell } from "./headings";

/** A settled sheet as it stands in this workbook. */
export interface Fit {
  readonly decision: SheetDecision;
  readonly top: number;
  readonly height: 1 | 2;
  /** Its headings, and those beside them that no decision knows. */
  readonly cells: readonly HeaderCell[];
  readonly taken: ReadonlyMap<HeaderCell, HeadingTaken>;
  /** Headings of the decision that are used and no longer there. */
  readonly gone: readonly HeadingTaken[];
}

const ROWS_LOOKED_AT = 200;
/** A sheet of another name is read in the same way where so many of the headings are the same. */
const ALIKE = 0.8;

/**
 * The decisions that hold for each sheet, by its index: those of its name, or where it has none, those of a sheet that is laid out
 * alike, such as this quarter's in place of the last one's. A decision whose headings are not there does not hold.
 */
export function fitDecisions(workbook: WorkbookIn, settled: readonly SheetDecision[]): Map<number, Fit[]> {
  const fits = new Map<number, Fit[]>();
  const named = new Set(settled.map(({ sheet }) => keyOf(sheet)));
  workbook.sheets.forEach((sheet, index) => {
    const isKnown = named.has(keyOf(sheet.name));
    const candidates = isKnown ? settled.filter((each) => keyOf(each.sheet) === keyOf(sheet.name)) : settled;
    const own = candidates.flatMap((each) => fit(sheet, each, isKnown ? 0.5 : ALIKE) ?? []);
    const best = isKnown ? oneOfEachKind(own) : likeliest(own);
    if (best.length > 0) fits.set(index, withUnknown(sheet, best));
  });
  return fits;
}

/**
 * Sheets of one name in several files are settled apart: of those that take the same headings for the same kind of table, the one
 * that explains most holds here.
 */
function oneOfEachKind(fits: readonly Fit[]): Fit[] {
  const best = [...fits].sort((a, b) => b.taken.size - a.taken.size || a.gone.length - b.gone.length);
  const kept = best.filter((each, at) => !best.slice(0, at).some((other) => isSamePart(other, each)));
  return fits.filter((each) => kept.includes(each));
}

function isSamePart(a: Fit, b: Fit): boolean {
  if (a.decision.is !== b.decision.is) return false;
  if (a.cells.length === 0 || b.cells.length === 0) return a.cells.length === b.cells.length;
  return a.top === b.top && a.cells.some(({ column }) => b.cells.some((other) => other.column === column));
}

/** Of sheets laid out alike those of one, the one that explains most headings. */
function likeliest(fits: readonly Fit[]): Fit[] {
  const bySheet = new Map<string, Fit[]>();
  for (const each of fits.filter(({ decision }) => decision.is !== "not used")) {
    const key = keyOf(each.decision.sheet);
    bySheet.set(key, [...(bySheet.get(key) ?? []), each]);
  }
  const explained = (own: readonly Fit[]) => own.reduce((sum, each) => sum + each.taken.size, 0);
  return [...bySheet.values()].sort((a, b) => explained(b) - explained(a))[0] ?? [];
}

function fit(sheet: SheetIn, decision: SheetDecision, least: number): Fit | null {
  const headings = decision.headings.filter((each) => !isVirtual(each));
  const [first, second] = decision.headerRows;
  const height = second === undefined ? 1 : 2;
  if (headings.length === 0 || first === undefined) return decision.is === "not used" ? nothing(decision) : null;
  let best: Fit | null = null;
  for (const top of rowsToTry(sheet, first - 1)) {
    const each = fitAt(sheet, decision, headings, top, height);
    if (each.taken.size > (best?.taken.size ?? 0)) best = each;
    if (best?.taken.size === headings.length) break;
  }
  return best && best.taken.size >= least * headings.length ? best : null;
}

function nothing(decision: SheetDecision): Fit {
  return { decision, top: 0, height: 1, cells: [], taken: new Map(), gone: [] };
}

/** The row that was settled, then those nearest to it. */
function rowsToTry(sheet: SheetIn, settled: number): number[] {
  const rows = Array.from({ length: Math.min(ROWS_LOOKED_AT, sheet.grid.rowCount) }, (_, row) => row);
  return rows.sort((a, b) => Math.abs(a - settled) - Math.abs(b - settled) || a - b);
}

function fitAt(
  sheet: SheetIn,
  decision: SheetDecision,
  headings: readonly HeadingTaken[],
  top: number,
  height: 1 | 2,
): Fit {
  const cells = headerCells(sheet, top, height, 0, sheet.grid.columns.length - 1);
  const taken = new Map<HeaderCell, HeadingTaken>();
  const gone: HeadingTaken[] = [];
  for (const heading of headings) {
    const key = headingKey(heading.heading) || keyOf(heading.heading);
    const free = cells.filter((cell) => !taken.has(cell));
    const found =
      free.find((cell) => keyOf(cell.text) === keyOf(heading.heading)) ?? free.find((cell) => hasKey(cell, key));
    if (found) taken.set(found, heading);
    else if (!("means" in heading) || heading.means !== null) gone.push(heading);
  }
  return { decision, top, height, cells: cells.filter((cell) => taken.has(cell)), taken, gone };
}

function hasKey(cell: HeaderCell, key: string): boolean {
  return cell.keys.includes(key) || keyOf(cell.text) === key;
}

/** Adds the headings of the same row that no decision knows to the part that they touch. */
function withUnknown(sheet: SheetIn, fits: readonly Fit[]): Fit[] {
  return fits.map((each) => {
    if (each.cells.length === 0) return each;
    const all = headerCells(sheet, each.top, each.height, 0, sheet.grid.columns.length - 1);
    const others = fits.filter((other) => other !== each && other.top === each.top);
    const claimed = new Set(others.flatMap((other) => other.cells.map(({ column }) => column)));
    const own = new Map(each.cells.map((cell) => [cell.column, cell]));
    const cells = segmentsOf(all.filter(({ column }) => own.has(column) || !claimed.has(column)))
      .filter((segment) => segment.some(({ column }) => own.has(column)))
      .flat();
    return { ...each, cells: cells.map((cell) => own.get(cell.column) ?? cell) };
  });
}
