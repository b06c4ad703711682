import { referrals } from "../../tables/referrals";
import { REFERRAL_DEFINITIONS } from "../../tables/referrals-notes";
import type { TableColumn, TableValue } from "../../tables/table";
import type { DraftTable } from "../release-table";
import type { Drafting } from "./drafting";
import { draftRow, type RowCells } from "./entries";
import { ReferralCells, type SliceCells } from "./referral-cells";
import { ReferralLists, type SliceLists } from "./referral-slices";
import { totalReferrals } from "./referral-total";

/** Places after the point that leave: more of them would give back on which days single children were followed. */
const DIGITS: Readonly<Record<string, number>> = {
  ...{ childMonths: 0, per100ChildMonths: 1, expected: 1, ratio: 2, lower: 2, upper: 2, p: 3, holm: 3, bh: 3 },
  ...{ funnel95Lower: 2, funnel95Upper: 2, funnel998Lower: 2, funnel998Upper: 2 },
};

const NOTES: readonly string[] = [
  ...REFERRAL_DEFINITIONS,
  "Child-months leave as whole numbers, expected numbers and rates with one place after the point, ratios with two.",
];

/** Table 4. Expected numbers and ratios give all referrals of the period back, or those of an area. */
export function draftReferrals(drafting: Drafting): DraftTable {
  const { context, builder } = drafting;
  const { id, title, population, columns, rows } = referrals(context);
  const lists = new ReferralLists(context);
  const cells = new ReferralCells(drafting);
  const slices = slicesInOrder(lists);
  cells.add(lists.all, false);
  const total = totalReferrals(
    drafting,
    lists.all.referrals.map(({ child }) => child),
  );
  const own = slices.map((slice) => ({ slice, cells: cells.add(slice, true) }));
  addSums(lists, cells, slices);
  const drafted = own.map((each) => {
    const wholeOf = each.slice.dimension === "site and area" ? areaOf(own, each.slice) : total;
    return draftRow(builder, columns, rounded(columns, rowOf(each.slice, rows)), rowCells(each, own, wholeOf));
  });
  return { id, title, population, columns, rows: drafted, notes: NOTES };
}

/** The row of the table; of a source that referred nobody in the period, which has none there, the row that it would have. */
function rowOf({ dimension, value }: SliceLists, rows: readonly (readonly TableValue[])[]): readonly TableValue[] {
  const found = rows.find((row) => row[0] === dimension && row[1] === value);
  if (found) return found;
  const [children, childMonths] = rows.find((row) => row[0] === "area")?.slice(2) ?? [];
  const none = [dimension, value, children ?? null, childMonths ?? null, 0, 0, childMonths === 0 ? null : 0];
  return (rows[0] ?? []).map((_, at) => none[at] ?? null);
}

interface Row {
  readonly slice: SliceLists;
  readonly cells: SliceCells;
}

function slicesInOrder(lists: ReferralLists): SliceLists[] {
  const bySite = lists.bySite();
  const siteAndArea = bySite.flatMap((site) => lists.bySiteAndArea(site));
  return [...bySite, ...lists.byArea(), ...lists.byBand(), ...lists.byQuarter(), ...lists.bySource(), ...siteAndArea];
}

function addSums({ all }: ReferralLists, cells: ReferralCells, slices: readonly SliceLists[]): void {
  const of = (dimension: SliceLists["dimension"]) => slices.filter((slice) => slice.dimension === dimension);
  for (const by of ["site", "band", "quarter", "area", "source"] as const) {
    const parts = of(by);
    if (parts.length === 0) continue;
    cells.sumReferrals(all, parts, by);
    cells.sumChildrenReferred(all, parts, by);
    if (by !== "area" && by !== "source") cells.sumChildren(all, parts, by);
  }
  const pairs = of("site and area");
  for (const site of of("site"))
    addPairs(
      cells,
      site,
      pairs.filter(({ group }) => group === site.group),
      "area",
    );
  for (const area of of("area"))
    addPairs(
      cells,
      area,
      pairs.filter(({ subject }) => subject === area.subject),
      "site",
    );
}

function addPairs(cells: ReferralCells, whole: SliceLists, parts: readonly SliceLists[], by: string): void {
  if (parts.length === 0) return;
  cells.sumReferrals(whole, parts, by);
  cells.sumChildrenReferred(whole, parts, by);
}

function areaOf(rows: readonly Row[], { subject }: SliceLists): number {
  return rows.find(({ slice }) => slice.dimension === "area" && slice.subject === subject)!.cells.referrals;
}

/** Adjusted p hang on every row of the dimension. */
function rowCells({ slice, cells }: Row, rows: readonly Row[], whole: number): RowCells {
  const { children, referrals: own, childrenReferred } = cells;
  const dimension = rows.filter((row) => row.slice.dimension === slice.dimension).map((row) => row.cells.referrals);
  const compared = [children, own, whole];
  const adjusted = [...new Set([...compared, ...dimension])];
  return {
    counts: { children, referrals: own, childrenReferred },
    figures: {
      ...{ childMonths: [children], per100ChildMonths: [children, own], expected: [children, whole] },
      ...Object.fromEntries(COMPARED.map((key) => [key, compared])),
      ...{ holm: adjusted, bh: adjusted },
    },
  };
}

const COMPARED = ["ratio", "lower", "upper", "p", "funnel95Lower", "funnel95Upper", "funnel998Lower", "funnel998Upper"];

function rounded(columns: readonly TableColumn[], row: readonly TableValue[]): TableValue[] {
  return row.map((value, at) => {
    const digits = DIGITS[columns[at]?.key ?? ""];
    return typeof value !== "number" || digits === undefined ? value : Math.round(value * 10 ** digits) / 10 ** digits;
  });
}
