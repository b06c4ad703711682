import { a1, placeOfA1 } from "../../workbook/cells";
import { fileOf, placeInWords } from "../../workbook/sources";
import type { WorkbookIn } from "../../workbook/workbook";
import { shownText } from "../cells/cell-text";
import { keyOf } from "../cells/words";
import type { EnrolmentRow } from "../children/enrolment-row";
import type { Decision } from "../corrections/decisions";
import type { SameChild } from "./understanding";

const MOST = 50;

interface Kid {
  readonly key: string;
  readonly row: EnrolmentRow;
}

/**
 * Rows of Children that may be one child under two ids: ids that differ by zeros, hyphens, spaces or letters for digits alone; or
 * one birth date at one site or in one family. Only suggested: twins share all of these.
 */
export function sameChildren(rows: readonly EnrolmentRow[], isSettled: (a: string, b: string) => boolean): SameChild[] {
  const kids = firstRows(rows);
  const pairs = [
    ...pairsBy(
      kids,
      ({ key }) => looseId(key),
      () => "The two ids differ only by zeros, hyphens or spaces.",
    ),
    ...pairsBy(kids, birthAnd("family"), () => "The same birth date in the same family. Twins have this too."),
    ...pairsBy(kids, birthAnd("site"), () => "The same birth date at the same site. Check whether it is one child."),
  ];
  const seen = new Set<string>();
  const all = pairs.filter(({ first, second }) => {
    const pair = `${first.key}\n${second.key}`;
    return !isSettled(first.key, second.key) && !seen.has(pair) && seen.add(pair);
  });
  return all
    .slice(0, MOST)
    .map(({ first, second, why }) => ({ first: cellOf(first.row), second: cellOf(second.row), why }));
}

/** The correction that joins the two ids of a suggestion: rows of the second count as rows of the first. */
export function sameChildDecision(workbook: WorkbookIn, { first, second }: SameChild): Decision {
  return { kind: "same-child", child: idAt(workbook, first), alias: idAt(workbook, second) };
}

function firstRows(rows: readonly EnrolmentRow[]): Kid[] {
  const kids = new Map<string, Kid>();
  for (const row of rows) if (!kids.has(row.key)) kids.set(row.key, { key: row.key, row });
  return [...kids.values()];
}

function pairsBy(kids: readonly Kid[], of: (kid: Kid) => string, why: () => string) {
  const first = new Map<string, Kid>();
  return kids.flatMap((second) => {
    const key = of(second);
    const earlier = key === "" ? undefined : first.get(key);
    if (key !== "" && !earlier) first.set(key, second);
    return earlier ? [{ first: earlier, second, why: why() }] : [];
  });
}

function birthAnd(column: "family" | "site") {
  return ({ row: { value } }: Kid) => {
    const other = keyOf(value[column]);
    return value.birth === null || other === "" ? "" : `${value.birth} ${other}`;
  };
}

/** `a-007`, `A7` and `a 07` are one. */
function looseId(key: string): string {
  return key.replace(/[^\p{L}\p{N}]/gu, "").replace(/(^|\p{L})0+(?=\d)/gu, "$1");
}

function cellOf({ block, row }: EnrolmentRow): string {
  return placeInWords({ ...fileOf(block), sheet: block.sheetName }, a1(row, block.columns.get("child") as number));
}

function idAt(workbook: WorkbookIn, place: string): string {
  const at = place.lastIndexOf("!");
  const sheet = workbook.sheets.find(
    (each) => placeInWords({ ...fileOf(each), sheet: each.name }) === place.slice(0, at),
  );
  const cell = placeOfA1(place.slice(at + 1));
  if (!sheet || !cell) throw new RangeError("sameChildDecision: no such cell");
  return shownText(sheet.grid, cell.row, cell.column);
}
