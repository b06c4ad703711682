import type { FindingCollector } from "../findings/collector";
import { type Enrolments, type GroupColumn, NO_DAY } from "../records";
import type { EnrolmentRow } from "./enrolment-row";

/** Enrollments, and the rows of those that are listed as begun at two sites on one day. */
export interface SitesTold {
  readonly enrolments: Enrolments;
  readonly listed: ReadonlySet<number>;
}

/**
 * Enrollments of one child begun on one day at two sites: each is listed at its cell, and on the days that two of them cover
 * the child is at neither site. From the day on which only one site is left, it is that one.
 */
export function atNeitherSite(
  findings: FindingCollector,
  rows: readonly EnrolmentRow[],
  enrolments: Enrolments,
): SitesTold {
  const site = enrolments.columns.find(({ heading }) => heading === "Site");
  const listed = new Set<number>();
  if (!site) return { enrolments, listed };
  const draft: Draft = {
    enrolled: enrolments.enrolled.slice(),
    left: enrolments.left.slice(),
    columns: enrolments.columns.map((column) => ({ ...column, values: [...column.values] })),
  };
  for (const own of begunTogether(enrolments)) {
    const ends = endsBySite(own, enrolments, site);
    if (ends.length < 2) continue;
    own.forEach((row) => listed.add(row));
    settle(own, enrolments, ends, draft);
  }
  for (const row of listed) {
    const { block, row: at } = rows[row] as EnrolmentRow;
    const column = block.columns.get("site") ?? block.columns.get("enrolled") ?? block.columns.get("child");
    findings.cell("enrolment-two-sites", block, at, column as number);
  }
  return { enrolments: listed.size === 0 ? enrolments : { ...enrolments, ...draft }, listed };
}

interface Draft {
  readonly enrolled: Int32Array;
  readonly left: Int32Array;
  readonly columns: readonly (GroupColumn & { readonly values: string[] })[];
}

/** Rows of one child that begin on the same day and last at least one. */
function begunTogether({ child, enrolled, left }: Enrolments): number[][] {
  const groups = new Map<string, number[]>();
  child.forEach((each, row) => {
    const day = enrolled[row] as number;
    if (day === NO_DAY || left[row] === day) return;
    const key = `${each} ${day}`;
    groups.set(key, [...(groups.get(key) ?? []), row]);
  });
  return [...groups.values()].filter((own) => own.length > 1);
}

interface SiteEnd {
  readonly row: number;
  /** The first day on which the child is no longer there; Infinity while it still is. */
  readonly end: number;
}

/** How long the child was at each site that is named, the longest first. */
function endsBySite(own: readonly number[], { left }: Enrolments, site: GroupColumn): SiteEnd[] {
  const ends = new Map<string, SiteEnd>();
  for (const row of own) {
    const name = site.values[row] as string;
    const end = left[row] === NO_DAY ? Infinity : (left[row] as number);
    if (name !== "" && end >= (ends.get(name)?.end ?? -Infinity)) ends.set(name, { row, end });
  }
  return [...ends.values()].sort((a, b) => b.end - a.end);
}

/** One row holds the days of both sites, another the days after them; every other row holds none. */
function settle(own: readonly number[], { enrolled }: Enrolments, ends: readonly SiteEnd[], draft: Draft): void {
  const [last, second] = ends as readonly [SiteEnd, SiteEnd];
  const begun = enrolled[own[0] as number] as number;
  const shared = own.find((row) => row !== last.row) as number;
  const lowest = own.at(-1) as number;
  for (const column of draft.columns) {
    const value = column.heading === "Site" ? "" : (column.values[lowest] as string);
    column.values[shared] = value;
  }
  for (const row of own) draft.left[row] = begun;
  draft.left[shared] = second.end === Infinity ? NO_DAY : second.end;
  if (second.end === last.end) return;
  draft.enrolled[last.row] = second.end;
  draft.left[last.row] = last.end === Infinity ? NO_DAY : last.end;
}
