import { type AgeBasis, type AgeClock, firstDayOfAge } from "../age/correction";
import { calendarOf, type Day, dayOf } from "../age/day";

/**
 * The first day on which a child's age reaches each band edge: what `firstDayOfAge` gives, for many children.
 *
 * Whole months are read from a table of month starts: the calendar's arithmetic for every child and edge would take longer
 * than counting the looks.
 */
export class EdgeDays {
  private readonly firstMonth: number;
  private readonly starts: Int32Array;

  constructor(
    clocks: readonly AgeClock[],
    private readonly edges: readonly number[],
  ) {
    const anchors = clocks.reduce(
      ({ from, to }, clock) => ({ from: Math.min(from, clock.birth), to: Math.max(to, clock.correctedBirth) }),
      { from: Infinity, to: -Infinity },
    );
    const none = clocks.length === 0;
    this.firstMonth = (none ? 0 : monthOf(anchors.from)) + Math.floor(edges[0] ?? 0);
    const lastMonth = (none ? 0 : monthOf(anchors.to)) + Math.ceil(edges[edges.length - 1] ?? 0);
    this.starts = Int32Array.from({ length: lastMonth - this.firstMonth + 2 }, (_, at) =>
      monthStart(this.firstMonth + at),
    );
  }

  /** Writes one day an edge. */
  fill(clock: AgeClock, basis: AgeBasis, days: Float64Array): void {
    const isCorrected = basis === "corrected" && clock.stops > clock.birth;
    this.fillFrom(clock.birth, clock, basis, days);
    if (!isCorrected) return;
    const { month, dayOfMonth } = placeInMonth(clock.correctedBirth);
    for (let edge = 0; edge < this.edges.length; edge += 1) {
      const months = this.edges[edge] as number;
      if (!Number.isInteger(months)) continue;
      const corrected = this.dayAfter(month + months, dayOfMonth);
      days[edge] = corrected < clock.stops ? corrected : Math.max(clock.stops, days[edge] as number);
    }
  }

  private fillFrom(anchor: Day, clock: AgeClock, basis: AgeBasis, days: Float64Array): void {
    const { month, dayOfMonth } = placeInMonth(anchor);
    for (let edge = 0; edge < this.edges.length; edge += 1) {
      const months = this.edges[edge] as number;
      days[edge] = Number.isInteger(months)
        ? this.dayAfter(month + months, dayOfMonth)
        : firstDayOfAge(clock, months, basis);
    }
  }

  /** The day of a month, clamped to the month's last. */
  private dayAfter(month: number, dayOfMonth: number): Day {
    const at = month - this.firstMonth;
    const start = this.starts[at] as number;
    return start + Math.min(dayOfMonth, (this.starts[at + 1] as number) - start) - 1;
  }
}

/** Months since the year 0. */
function monthOf(day: Day): number {
  return placeInMonth(day).month;
}

function placeInMonth(day: Day): { month: number; dayOfMonth: number } {
  const { year, month, dayOfMonth } = calendarOf(day);
  return { month: year * 12 + month - 1, dayOfMonth };
}

function monthStart(month: number): Day {
  const year = Math.floor(month / 12);
  return dayOf(year, month - year * 12 + 1, 1);
}
