import type { CellRange, SheetIn } from "../../workbook/workbook";
import { type Day, dayFromIso } from "../../age/day";
import type { DateSystem } from "../../age/serial";
import { headingKey, keyOf } from "../cells/words";
import type { SheetDecision } from "../corrections/decisions";
import {
  GROUP,
  type HeadingTaken,
  meaningTaken,
  ROW_TITLE,
  SHEET_DAY,
  SHEET_NAME,
  type SheetKind,
  skillOfDays,
  skillTaken,
} from "../corrections/settled";
import { TABLES } from "../tables";
import { GRID } from "../tables/observations";
import type { TableSpec } from "../tables/spec";
import { otherDayInTitle } from "./day-of-sheet";
import type { Fit } from "./fit-decisions";
import { columnMeant, type HeaderCell, type HeadingMatch, matchHeadings } from "./headings";
import { bounded, type Region, type SettledRegion } from "./region";

/** The table of each kind of sheet; a grid is read as Observations once the skills are known. */
const TABLE_OF_KIND: Readonly<Record<SheetKind, string | null>> = {
  children: "Children",
  observations: "Observations",
  grid: null,
  skills: "Skills",
  referrals: "Referrals",
  signs: "Signs",
  ratings: "Ratings",
  "not used": null,
};

/** A sheet, and whether no other file has one of its name. */
interface SheetSettled {
  readonly sheet: SheetIn;
  readonly sheetIndex: number;
  readonly isNamedOnce: boolean;
}

/** The regions of a sheet of which a person settled what it is. */
export function settledRegions(on: SheetSettled, fits: readonly Fit[], system: DateSystem): Region[] {
  const used = fits.filter(({ decision }) => decision.is !== "not used");
  const regions = used.map((fit) => settledRegion(on, fit, used));
  return regions.map((region) => withTitle({ ...region, range: bounded(region, regions) }, system));
}

/** The day that the title says where another one was given: a person has to look. */
function withTitle(region: Region, system: DateSystem): Region {
  const { settled, sheet, range } = region;
  if (!settled || settled.day === null) return region;
  return { ...region, settled: { ...settled, titleDay: otherDayInTitle(sheet, range.top, system, settled.day) } };
}

function settledRegion({ sheet, sheetIndex, isNamedOnce }: SheetSettled, fit: Fit, all: readonly Fit[]): Region {
  const { decision, cells, top, height } = fit;
  const spec = TABLES.find(({ name }) => name === TABLE_OF_KIND[decision.is]) ?? null;
  const table = sheet.tables.find((each) => each.headerRow && each.range.top === top && holds(each.range, cells));
  const columns = cells.map((cell) => cell.column);
  const repeats =
    decision.is === "children" && all.some((other) => other !== fit && other.top === top && shares(other, fit));
  return {
    sheetIndex,
    sheet,
    cells,
    range: table?.range ?? {
      top,
      left: Math.min(...columns),
      bottom: sheet.grid.rowCount - 1,
      right: Math.max(...columns),
    },
    firstRow: top + height,
    totalsRow: table?.totalsRow ? table.range.bottom : null,
    spec,
    match: withoutNamed(settledMatch(spec ?? GRID, fit), sheetNameTaken(spec, decision)),
    beside: [],
    settled: {
      decision,
      ...takenOf(fit),
      day: isNamedOnce ? dayTaken(sheet, decision) : null,
      sheetName: sheetNameTaken(spec, decision),
      rowTitle: virtualTaken(spec, decision, ROW_TITLE),
      titleDay: null,
      repeats,
    },
  };
}

/** Two tables share their rows where both name the child in the same column. */
function shares(a: Fit, b: Fit): boolean {
  const child = ({ cells, taken }: Fit) => cells.find((cell) => meaning(taken.get(cell)) === "child")?.column;
  const column = child(a);
  return column !== undefined && column === child(b);
}

function meaning(taken: HeadingTaken | undefined): string | null {
  const means = taken && meaningTaken(taken);
  return means ? headingKey(means) : null;
}

function settledMatch(spec: TableSpec, { cells, taken }: Fit): HeadingMatch {
  const columns = new Map<string, number>();
  const twice: HeaderCell[] = [];
  for (const column of spec.columns) {
    const own = cells.filter((cell) => {
      const means = taken.get(cell) && meaningTaken(taken.get(cell) as HeadingTaken);
      return means ? columnMeant(spec, means)?.key === column.key : false;
    });
    if (own.length === 1) columns.set(column.key, (own[0] as HeaderCell).column);
    else twice.push(...own);
  }
  // A heading that the person never saw is read where its name leaves no doubt and its column has no heading yet.
  const unseen = matchHeadings(
    spec,
    cells.filter((cell) => !taken.has(cell)),
  );
  for (const [key, column] of unseen.columns) if (!columns.has(key)) columns.set(key, column);
  const matched = new Set(columns.values());
  return {
    columns,
    twice,
    unmatched: cells.filter((cell) => !matched.has(cell.column) && !twice.includes(cell)),
    missing: spec.columns.filter((column) => column.required && !columns.has(column.key)),
  };
}

function takenOf({ cells, taken }: Fit): Pick<SettledRegion, "seen" | "groups" | "skills" | "daysOf"> {
  const daysOf = new Map<string, number>();
  const groups = new Set<number>();
  const skills = new Map<number, string>();
  for (const cell of cells) {
    const each = taken.get(cell);
    const skill = each ? skillTaken(each) : null;
    const days = each ? skillOfDays(each) : null;
    if (skill !== null) skills.set(cell.column, skill);
    else if (days !== null) daysOf.set(keyOf(days), cell.column);
    else if (each && meaningTaken(each) === GROUP) groups.add(cell.column);
  }
  const seen = new Set([...taken.keys()].map(({ column }) => column));
  return { seen, groups, skills, daysOf };
}

/** Never carried to a sheet of another name, nor to one of the same name in another file: its checks are of another day. */
function dayTaken(sheet: SheetIn, { sheet: name, headings }: SheetDecision): Day | null {
  if (keyOf(name) !== keyOf(sheet.name)) return null;
  const taken = headings.find(({ heading }) => heading === SHEET_DAY);
  return dayFromIso((taken && meaningTaken(taken)) ?? "");
}

function sheetNameTaken(spec: TableSpec | null, decision: SheetDecision): string | null {
  return virtualTaken(spec, decision, SHEET_NAME);
}

function virtualTaken(spec: TableSpec | null, { headings }: SheetDecision, virtual: string): string | null {
  const taken = headings.find(({ heading }) => heading === virtual);
  const means = taken && meaningTaken(taken);
  if (!means) return null;
  return means === GROUP ? GROUP : (columnMeant(spec ?? GRID, means)?.key ?? null);
}

/** A column that the name of the sheet stands for is not missing. */
function withoutNamed(match: HeadingMatch, named: string | null): HeadingMatch {
  return { ...match, missing: match.missing.filter(({ key }) => key !== named) };
}

function holds(range: CellRange, cells: readonly HeaderCell[]): boolean {
  return cells.every(({ column }) => column >= range.left && column <= range.right);
}
