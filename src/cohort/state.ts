/** Where a child stands with a skill on a day, by its last look (METHOD.md, section 4). */
export const STATE = { notAssessed: 0, met: 1, lost: 2, lostToConfirm: 3, emerging: 4, notMet: 5 } as const;
export const STATE_LABELS = ["not assessed", "met", "lost", "lost to confirm", "emerging", "not met"] as const;

/** One cell a child and skill, at `child * skillCount + skill`. */
export interface Attainment {
  readonly skillCount: number;
  /** The look that first saw the skill; NO_DAY where it was never seen. */
  readonly metDay: Int32Array;
  /** The last look without the skill before `metDay`, or the last look of all where it was never seen; NO_DAY where none. */
  readonly withoutDay: Int32Array;
  readonly lastLook: Int32Array;
  /** STATE, after the rule that a skill is not lost when one that follows it is met. */
  readonly state: Uint8Array;
  /** 1 where `metDay` is the day it was met, not the day of a look. */
  readonly exact: Uint8Array;
  /** 1 where observers disagreed on the last look's day. */
  readonly disagreed: Uint8Array;
}
