import { CELL } from "../../workbook/cells";
import { fileOf } from "../../workbook/sources";
import type { SheetIn, WorkbookIn } from "../../workbook/workbook";
import { headingKey, keyOf } from "../cells/words";
import type { DecisionsInForce } from "../corrections/in-force";
import {
  DAY_OF_SKILL,
  isVirtual,
  meaningTaken,
  SHEET_DAY,
  type SheetKind,
  skillOfDays,
  skillTaken,
} from "../corrections/settled";
import { rowsOf } from "../headings/block";
import { type Fit, fitDecisions } from "../headings/fit-decisions";
import { LIKELY, plainWords } from "../headings/likely";
import { findRegions } from "../headings/locate";
import type { Region } from "../headings/region";
import { guessHeadings } from "./guess-headings";
import { guessKind } from "./guess-kind";
import { guessHeader } from "./guess-header";
import { headingsSeen } from "./headings-seen";
import { AS_SETTLED, joinIds } from "./join-ids";
import { kindOfTable } from "./kinds";
import type { HeadingSeen, SheetTaken } from "./understanding";
import { sayTurned } from "./turned";
import { sheetsOfOneChild } from "./one-child-sheets";
import { nameSheets, virtualHeading, withDay, withRowTitles } from "./virtual-headings";

/** Every sheet, as it was settled before, as its headings say, or as it is guessed. */
export function takeSheets(workbook: WorkbookIn, before: DecisionsInForce): SheetTaken[] {
  const fits = fitDecisions(workbook, before.sheets);
  const regions = findRegions(workbook, before.headings, before.sheets);
  const known = skillsNamed(regions);
  const taken = workbook.sheets.map((sheet, index) => {
    const own = regions.filter((each) => each.sheetIndex === index);
    const fit = fits.get(index);
    const sure = fit ? [] : own.flatMap((region) => partsOf(region, known));
    const guess = () => (sure.length > 0 ? sure : guessed(sheet, known));
    const parts = fit?.map((each) => settledSheet(sheet, each, own)) ?? guess();
    return parts.map((each) => ({ ...fileOf(sheet), ...each }));
  });
  const keyed = taken.flat().map((each, i) => ({ ...each, key: `${each.sheet}#${i + 1}` }));
  const joined = sheetsOfOneChild(workbook, joinIds(workbook, keyed), known);
  return nameSheets(sayTurned(workbook, joined)).map((each) => withRowTitles(workbook, withDay(workbook, each)));
}

/** Ids and labels of the skills that tables of skills name. */
function skillsNamed(regions: readonly Region[]): string[] {
  return regions.flatMap(({ spec, match, sheet, firstRow, range }) => {
    if (spec?.name !== "Skills" || !match) return [];
    const columns = ["skill", "label"].flatMap((key) => match.columns.get(key) ?? []);
    return columns.flatMap((column) => {
      const { kinds, values } = sheet.grid.columns[column] ?? { kinds: [], values: [] };
      const keys: string[] = [];
      for (let row = firstRow; row <= range.bottom; row += 1) {
        if (kinds[row] === CELL.text) keys.push(headingKey(sheet.grid.strings[values[row] as number] as string));
      }
      return keys;
    });
  });
}

type Part = Omit<SheetTaken, "key">;

/** The tables of one region that was found by its headings: usually one, two where skills stand beside the children. */
function partsOf(region: Region, known: readonly string[]): Part[] {
  const { spec, match, sheet, cells, firstRow, range } = region;
  const { rows } = rowsOf(sheet.grid, range, firstRow, region.totalsRow);
  const seen = headingsSeen(sheet, cells, firstRow - range.top === 2, rows);
  const headerRows = Array.from({ length: firstRow - range.top }, (_, i) => range.top + i + 1);
  const base = { sheet: sheet.name, headerRows, rows: rows.length };
  const guess =
    spec && match?.missing.length === 0
      ? guessKind(seen, known, sheet.name, kindOfTable(spec.name))
      : guessKind(seen, known, sheet.name);
  return guess.length > 0 ? guess.map((each) => ({ ...base, ...each })) : [];
}

function settledSheet(sheet: SheetIn, { decision, cells, taken, top, height }: Fit, own: readonly Region[]): Part {
  const region = own.find((each) => each.settled?.decision === decision);
  const base = { sheet: sheet.name, is: decision.is, why: AS_SETTLED, doubtful: false };
  if (!region) return { ...base, headerRows: decision.headerRows, rows: 0, headings: [] };
  const { rows } = rowsOf(sheet.grid, region.range, region.firstRow, region.totalsRow);
  const seen = headingsSeen(sheet, cells, height === 2, rows);
  const unseen = guessHeadings(decision.is, seen, []);
  const headings = cells.map((cell, i): HeadingSeen => {
    const each = taken.get(cell);
    if (!each) return { ...(unseen[i] as HeadingSeen), skill: null, doubtful: true };
    const days = skillOfDays(each);
    const means = days === null ? meaningTaken(each) : DAY_OF_SKILL;
    return { ...(seen[i] as HeadingSeen), heading: each.heading, means, skill: days ?? skillTaken(each) };
  });
  const virtual = decision.headings
    .filter((each) => isVirtual(each) && (each.heading !== SHEET_DAY || keyOf(decision.sheet) === keyOf(sheet.name)))
    .map((each) => ({ ...virtualHeading(each.heading, rows.length), means: meaningTaken(each) }));
  const headerRows = Array.from({ length: height }, (_, i) => top + i + 1);
  return { ...base, headerRows, rows: rows.length, headings: [...headings, ...virtual] };
}

/** A sheet without a table that leaves no doubt: the likeliest row of headings, and the likeliest kind. */
function guessed(sheet: SheetIn, known: readonly string[]): Part[] {
  const header = guessHeader(sheet);
  if (!header) {
    return [
      {
        sheet: sheet.name,
        is: "not used",
        why: "Nothing on it is like a row of headings with rows below.",
        doubtful: false,
        headerRows: [],
        rows: 0,
        headings: [],
      },
    ];
  }
  const firstRow = header.top + header.height;
  const columns = header.cells.map(({ column }) => column);
  const range = {
    top: header.top,
    left: Math.min(...columns),
    bottom: sheet.grid.rowCount - 1,
    right: Math.max(...columns),
  };
  const child = header.cells.find(({ text }) => LIKELY.Children.child?.pattern.test(plainWords(text)))?.column;
  const { rows } = rowsOf(sheet.grid, range, firstRow, null, child);
  const seen = headingsSeen(sheet, header.cells, header.height === 2, rows);
  const headerRows = Array.from({ length: header.height }, (_, i) => header.top + i + 1);
  const base = { sheet: sheet.name, headerRows, rows: rows.length };
  const kinds = guessKind(seen, known, sheet.name);
  const lost = rowsAbove(sheet, header.top);
  const above = lost < FEWEST_ABOVE ? "" : ` ${lost} filled rows above its headings are not read.`;
  if (kinds.length > 0) return kinds.map((each) => ({ ...base, ...each, why: `${each.why}${above}`, doubtful: true }));
  const headings = guessHeadings("not used", seen, known);
  const looksLikeTable = rows.length >= 3 && seen.length >= 3;
  return [
    {
      ...base,
      is: "not used" as SheetKind,
      why: "Its headings fit none of the tables.",
      doubtful: looksLikeTable,
      headings,
    },
  ];
}

/** Rows above the headings that look like records: three cells or more. */
function rowsAbove({ grid }: SheetIn, top: number): number {
  const filled = (row: number) =>
    grid.columns.filter((cells) => (cells?.kinds[row] ?? CELL.empty) !== CELL.empty).length;
  return Array.from({ length: top }, (_, row) => row).filter((row) => filled(row) >= 3).length;
}

const FEWEST_ABOVE = 2;
