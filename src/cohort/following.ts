import type { Day } from "../age/day";
import { type Enrolments, NO_DAY } from "../records/records";

/** No enrolment is in force. */
export const NOT_FOLLOWED = -1;

/** One enrolment: followed on day d when `enrolled <= d < left`. */
interface Span {
  readonly row: number;
  readonly enrolled: Day;
  /** Infinity while still enrolled. */
  readonly left: Day;
}

/** On which days each child is followed, over all its enrolments. Where two overlap, the later begun counts. */
export class Following {
  private readonly spans: readonly (readonly Span[])[];

  constructor(enrolments: Enrolments, childCount: number) {
    const spans: Span[][] = Array.from({ length: childCount }, () => []);
    enrolments.child.forEach((child, row) => {
      const enrolled = enrolments.enrolled[row] as number;
      const left = enrolments.left[row] === NO_DAY ? Infinity : (enrolments.left[row] as number);
      if (enrolled !== NO_DAY && enrolled < left) spans[child]?.push({ row, enrolled, left });
    });
    for (const each of spans) each.sort((a, b) => a.enrolled - b.enrolled || a.row - b.row);
    this.spans = spans;
  }

  /** The row of Enrolments in force on a day, or NOT_FOLLOWED. */
  enrolmentOn(child: number, day: Day): number {
    const inForce = this.spansOf(child).findLast((span) => span.enrolled <= day && day < span.left);
    return inForce?.row ?? NOT_FOLLOWED;
  }

  /** The row of the latest enrolment begun by a day, or NOT_FOLLOWED: who has one was followed on some day up to then. */
  latestEnrolmentBegunBy(child: number, day: Day): number {
    return this.spansOf(child).findLast((span) => span.enrolled <= day)?.row ?? NOT_FOLLOWED;
  }

  /** The first day followed, or null when that is after the day given. */
  firstDayUpTo(child: number, day: Day): Day | null {
    const first = this.spansOf(child)[0];
    return first && first.enrolled <= day ? first.enrolled : null;
  }

  /** The last day followed of a child that left within [from, to] and is not followed again by then; null for all others. */
  lastDayIfLeft(child: number, from: Day, to: Day): Day | null {
    const begun = this.spansOf(child).filter((span) => span.enrolled <= to);
    const left = Math.max(...begun.map((span) => span.left), -Infinity);
    return left >= from && left <= to ? left - 1 : null;
  }

  /** The days on which an enrolment comes into force or ends. */
  changesOf(child: number): readonly Day[] {
    return this.spansOf(child).flatMap(({ enrolled, left }) => (left === Infinity ? [enrolled] : [enrolled, left]));
  }

  private spansOf(child: number): readonly Span[] {
    return this.spans[child] ?? [];
  }
}
