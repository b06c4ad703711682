import { NO_DAY, RESULT } from "../records/records";
import { type Attainment, STATE } from "./state";

const EXACT_BIT = 16;
const RESULT_BITS = 15;

/** What the result of a day says, by the set of results written for it; different results count as not met. */
const OUTCOME_OF = Uint8Array.from({ length: 16 }, (_, results) => {
  const single = [RESULT.notMet, RESULT.emerging, RESULT.met, RESULT.lost].find((each) => results === 1 << each);
  return single ?? RESULT.notMet;
});

const DISAGREES = Uint8Array.from({ length: 16 }, (_, results) => ((results & (results - 1)) === 0 ? 0 : 1));

/** Reads one child's looks in day order and keeps, for every skill, the day being gathered and what went before. */
export class SkillScan {
  private readonly day: Int32Array;
  private readonly results: Uint8Array;
  private readonly met: Int32Array;
  private readonly without: Int32Array;
  private readonly state: Uint8Array;
  private readonly exact: Uint8Array;

  constructor(private readonly skillCount: number) {
    this.day = new Int32Array(skillCount).fill(NO_DAY);
    this.results = new Uint8Array(skillCount);
    this.met = new Int32Array(skillCount).fill(NO_DAY);
    this.without = new Int32Array(skillCount).fill(NO_DAY);
    this.state = new Uint8Array(skillCount);
    this.exact = new Uint8Array(skillCount);
  }

  look(skill: number, day: number, result: number, exact: number): void {
    if (day !== this.day[skill]) {
      if (this.day[skill] !== NO_DAY) this.closeDay(skill);
      this.day[skill] = day;
      this.results[skill] = 0;
    }
    this.results[skill]! |= (1 << result) | (exact === 0 ? 0 : EXACT_BIT);
  }

  /** Writes the child's cells from `base` on and makes ready for the next child. */
  finish(to: Attainment, base: number): void {
    for (let skill = 0; skill < this.skillCount; skill += 1) {
      if (this.day[skill] === NO_DAY) continue;
      this.closeDay(skill);
      const cell = base + skill;
      to.metDay[cell] = this.met[skill] as number;
      to.withoutDay[cell] = this.without[skill] as number;
      to.lastLook[cell] = this.day[skill] as number;
      to.state[cell] = this.state[skill] as number;
      to.exact[cell] = this.exact[skill] as number;
      to.disagreed[cell] = DISAGREES[(this.results[skill] as number) & RESULT_BITS] as number;
      this.forget(skill);
    }
  }

  private closeDay(skill: number): void {
    const results = this.results[skill] as number;
    const outcome = OUTCOME_OF[results & RESULT_BITS] as number;
    if (this.met[skill] !== NO_DAY) {
      this.state[skill] =
        outcome === RESULT.met ? STATE.met : outcome === RESULT.lost ? STATE.lost : STATE.lostToConfirm;
    } else if (outcome >= RESULT.met) {
      this.met[skill] = this.day[skill] as number;
      this.exact[skill] = outcome === RESULT.met && results & EXACT_BIT ? 1 : 0;
      this.state[skill] = outcome === RESULT.met ? STATE.met : STATE.lost;
    } else {
      this.without[skill] = this.day[skill] as number;
      this.state[skill] = outcome === RESULT.emerging ? STATE.emerging : STATE.notMet;
    }
  }

  private forget(skill: number): void {
    this.day[skill] = NO_DAY;
    this.met[skill] = NO_DAY;
    this.without[skill] = NO_DAY;
    this.exact[skill] = 0;
  }
}
