import { sourceOf } from "../observations/judge-observations";
import type { EnrolmentRow } from "./enrolment-row";
import type { ChildTable } from "./read-children";
import type { Reading } from "../rows/reading";
import { type Enrolments, NO_DAY, type Observations } from "../records";
import type { Staged } from "../observations/staged";
import { atNeitherSite } from "./two-sites";

/** The enrolments as columns; a blank `Enrolled` stands as the child's first observation. */
export function enrolmentsOf(reading: Reading, table: ChildTable, observations: Observations): Enrolments {
  const first = firstLooks(observations, table.children.ids.length);
  const child = table.childOfRow;
  const enrolled = Int32Array.from(
    table.rows,
    (each, i) => each.value.enrolled ?? (first[child[i] as number] as number),
  );
  const left = Int32Array.from(table.rows, (each) => each.value.left ?? NO_DAY);
  table.rows.forEach((each) => {
    const column = each.block.columns.get("enrolled");
    if (each.value.enrolled === null && column !== undefined)
      reading.findings.cell("enrolled-blank", each.block, each.row, column);
  });
  const recorded = { child, enrolled, left, columns: table.columns };
  const { enrolments, listed } = atNeitherSite(reading.findings, table.rows, recorded);
  listOverlaps(reading, table.rows, recorded, listed);
  return enrolments;
}

/** Rows of each child, so that a day can be looked up: whether the child is enrolled on it. */
export class Stays {
  private readonly start: Int32Array;
  private readonly order: Int32Array;

  constructor(
    private readonly enrolments: Enrolments,
    children: number,
  ) {
    this.start = new Int32Array(children + 1);
    for (const child of enrolments.child) this.start[child + 1] = (this.start[child + 1] as number) + 1;
    for (let c = 0; c < children; c += 1) this.start[c + 1] = (this.start[c + 1] as number) + (this.start[c] as number);
    const next = this.start.slice();
    this.order = new Int32Array(enrolments.child.length);
    enrolments.child.forEach((child, row) => {
      this.order[next[child] as number] = row;
      next[child] = (next[child] as number) + 1;
    });
  }

  covers(child: number, day: number): boolean {
    const end = this.start[child + 1] as number;
    for (let at = this.start[child] as number; at < end; at += 1) {
      const row = this.order[at] as number;
      const left = this.enrolments.left[row] as number;
      const enrolled = this.enrolments.enrolled[row] as number;
      if (enrolled !== NO_DAY && enrolled <= day && (left === NO_DAY || day < left)) return true;
    }
    return false;
  }
}

/** Lists looks from before enrolment or after leaving, and counts them. */
export function listOutside(reading: Reading, staged: Staged, stays: Stays): number {
  let outside = 0;
  for (let i = 0; i < staged.length; i += 1) {
    if (stays.covers(staged.child[i] as number, staged.day[i] as number)) continue;
    const { block } = sourceOf(staged, i);
    const column = block.wide.length > 0 ? undefined : block.columns.get("date");
    reading.findings.cell("outside-enrolment", block, staged.row[i] as number, column ?? (staged.column[i] as number));
    outside += 1;
  }
  return outside;
}

function firstLooks(observations: Observations, children: number): Int32Array {
  const first = new Int32Array(children).fill(NO_DAY);
  for (let i = 0; i < observations.child.length; i += 1) {
    const child = observations.child[i] as number;
    const day = observations.day[i] as number;
    if (first[child] === NO_DAY || day < (first[child] as number)) first[child] = day;
  }
  return first;
}

/** @param others - rows of which the overlap is listed already */
function listOverlaps(
  reading: Reading,
  rows: readonly EnrolmentRow[],
  { child, enrolled, left }: Enrolments,
  others: ReadonlySet<number>,
): void {
  const order = Array.from(rows.keys()).sort(
    (a, b) => (child[a] as number) - (child[b] as number) || (enrolled[a] as number) - (enrolled[b] as number) || a - b,
  );
  let reach = 0;
  order.forEach((row, at) => {
    const before = order[at - 1];
    const sameChild = before !== undefined && child[before] === child[row];
    if (sameChild && (enrolled[row] as number) < reach && !(others.has(row) && others.has(before))) {
      const { block, row: sheetRow } = rows[row] as EnrolmentRow;
      reading.findings.cell(
        "enrolment-overlap",
        block,
        sheetRow,
        block.columns.get("enrolled") ?? (block.columns.get("child") as number),
      );
    }
    const end = left[row] === NO_DAY ? Infinity : (left[row] as number);
    reach = sameChild ? Math.max(reach, end) : end;
  });
}
