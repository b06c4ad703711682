import type { AgeBasis } from "../../age/correction";
import { keyOf } from "../../records/cells/words";
import { NO_DAY } from "../../records/records";
import type { ROW_PARTS } from "./parts";
import { NOWHERE, type Side } from "./standing";

type RowPart = (typeof ROW_PARTS)[number];

/** What two workbooks say differently, a child at a time. What is dated after the earlier day counts nowhere. */
export class RowDifferences {
  private readonly own = new Map<string, ReadonlySet<RowPart>>();
  private readonly checks = new Map<string, ReadonlySet<RowPart>>();
  private readonly rows: { readonly earlier: ChildRows; readonly later: ChildRows };

  constructor(
    private readonly earlier: Side,
    private readonly later: Side,
  ) {
    const day = earlier.context.asOf;
    this.rows = { earlier: new ChildRows(earlier, day), later: new ChildRows(later, day) };
  }

  /** What the rows of Children say differently of one child, in the columns that its place depends on. */
  ofChild(earlier: number, later: number, basis: AgeBasis): ReadonlySet<RowPart> {
    return remembered(this.own, `${earlier} ${later} ${basis}`, () => {
      if (earlier === NOWHERE) return new Set(["enteredLate"]);
      if (later === NOWHERE) return new Set(["removed"]);
      const found = this.enrolmentParts(earlier, later);
      const births = [this.earlier, this.later].map(
        ({ children }, at) => children.birth[[earlier, later][at] as number],
      );
      if (births[0] !== births[1]) found.add("corrected");
      if (basis === "corrected") add(found, this.gestationPart(earlier, later));
      return found;
    });
  }

  /** What the checks of one child and skill say differently. */
  ofChecks(
    earlier: { readonly child: number; readonly skill: number },
    later: { readonly child: number; readonly skill: number },
  ): ReadonlySet<RowPart> {
    return remembered(this.checks, `${earlier.child} ${earlier.skill} ${later.child} ${later.skill}`, () => {
      const [before, now] = [looksOf(this.earlier, earlier), looksOf(this.later, later)];
      const [gone, fresh] = [without(before, now), without(now, before)];
      const found = new Set<RowPart>();
      if (gone.length > 0 && fresh.length > 0) found.add("corrected");
      if (fresh.length > gone.length) found.add("enteredLate");
      if (gone.length > fresh.length) found.add("removed");
      return found;
    });
  }

  private gestationPart(earlier: number, later: number): RowPart | null {
    const [before, now] = [this.earlier.children.gestationDays[earlier], this.later.children.gestationDays[later]];
    return partOf(before === 0 ? "" : String(before), now === 0 ? "" : String(now));
  }

  /** Rows of Children are paired as rows of checks are: first those that begin on the same day, then in order of date. */
  private enrolmentParts(earlier: number, later: number): Set<RowPart> {
    const found = new Set<RowPart>();
    const { pairs, gone, fresh } = paired(this.rows.earlier.of(earlier), this.rows.later.of(later));
    if (gone > 0) found.add("removed");
    if (fresh > 0) found.add("enteredLate");
    for (const [before, now] of pairs) {
      before.forEach((cell, at) => add(found, partOf(cell, now[at] as string)));
    }
    return found;
  }
}

/** The cells of the rows of Children that place a child: the day of enrollment, the day of leaving, the groups. */
class ChildRows {
  private readonly rows = new Map<number, string[][]>();

  constructor({ context }: Side, day: number) {
    const { enrolments } = context.cohort;
    const columns = context.groups.columns.map(({ key }) => enrolments.columns.find(({ heading }) => heading === key));
    enrolments.child.forEach((child, row) => {
      const enrolled = enrolments.enrolled[row] as number;
      const left = enrolments.left[row] as number;
      if (enrolled === NO_DAY || enrolled > day) return;
      const groups = columns.map((column) => keyOf(column?.values[row] ?? ""));
      const hasLeft = left !== NO_DAY && left <= day;
      const cells = [String(enrolled), hasLeft ? String(left) : "", ...groups];
      this.rows.set(child, [...(this.rows.get(child) ?? []), cells]);
    });
  }

  of(child: number): readonly (readonly string[])[] {
    return this.rows.get(child) ?? [];
  }
}

type Cells = readonly string[];

function paired(before: readonly Cells[], now: readonly Cells[]) {
  const pairs: [Cells, Cells][] = [];
  const left = [...now];
  const unpaired: Cells[] = [];
  const take = (row: Cells, same: (other: Cells) => boolean) => {
    const at = left.findIndex(same);
    if (at < 0) return false;
    pairs.push([row, ...(left.splice(at, 1) as [Cells])]);
    return true;
  };
  const alike = (row: Cells) => take(row, (other) => other.every((cell, at) => cell === row[at]));
  const differing = before.filter((row) => !alike(row));
  for (const row of differing) if (!take(row, (other) => other[0] === row[0])) unpaired.push(row);
  const byDay = (a: Cells, b: Cells) => Number(a[0]) - Number(b[0]);
  const [gone, fresh] = [[...unpaired].sort(byDay), [...left].sort(byDay)];
  const count = Math.min(gone.length, fresh.length);
  for (let at = 0; at < count; at += 1) pairs.push([gone[at] as Cells, fresh[at] as Cells]);
  return { pairs, gone: gone.length - count, fresh: fresh.length - count };
}

/** Day, result and whether the day is exact, of the checks up to the day of the side that the differences are for. */
function looksOf({ context }: Side, { child, skill }: { readonly child: number; readonly skill: number }): string[] {
  if (child === NOWHERE || skill === NOWHERE) return [];
  const { looks } = context.cohort;
  const found: string[] = [];
  for (let at = looks.offsets[child] as number; at < (looks.offsets[child + 1] as number); at += 1) {
    if (looks.skill[at] !== skill || (looks.day[at] as number) > context.asOf) continue;
    found.push(`${looks.day[at]} ${looks.result[at]} ${looks.exact[at]}`);
  }
  return found;
}

/** What of the first list the second does not have, each as often as it is missing. */
function without(all: readonly string[], others: readonly string[]): string[] {
  const left = [...others];
  return all.filter((each) => {
    const at = left.indexOf(each);
    if (at >= 0) left.splice(at, 1);
    return at < 0;
  });
}

/** A cell filled in is entered late, one emptied is removed; null where nothing differs. */
function partOf(before: string, now: string): RowPart | null {
  if (before === now) return null;
  if (before === "") return "enteredLate";
  return now === "" ? "removed" : "corrected";
}

function add(found: Set<RowPart>, part: RowPart | null): void {
  if (part !== null) found.add(part);
}

function remembered<Value>(known: Map<string, Value>, key: string, make: () => Value): Value {
  const found = known.get(key) ?? make();
  known.set(key, found);
  return found;
}
