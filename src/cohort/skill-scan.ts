import { NO_DAY, RESULT } from "../records/records";
import { type Attainment, STATE } from "./state";

/** The state after a look, by its result: in the first half where the skill was not met before, in the second where it was. */
const STATE_AFTER = Uint8Array.from([
  STATE.notMet,
  STATE.emerging,
  STATE.met,
  STATE.lost,
  STATE.lostToConfirm,
  STATE.lostToConfirm,
  STATE.met,
  STATE.lost,
]);
const MET_BEFORE = 4;

/**
 * Reads the looks of each child in day order and keeps every cell as of the last look read. Different results of one day
 * count as not met, or as met where one of them is and the program says so: what the first of them did to the cell is
 * then taken back.
 */
export class SkillScan {
  private readonly lastResult: Uint8Array;
  /** Of each skill, what the cell held before the day at hand. */
  private readonly metBefore: Int32Array;
  private readonly withoutBefore: Int32Array;

  constructor(
    private readonly to: Attainment,
    private readonly disagreementIsMet: boolean,
  ) {
    this.lastResult = new Uint8Array(to.skillCount);
    this.metBefore = new Int32Array(to.skillCount);
    this.withoutBefore = new Int32Array(to.skillCount);
  }

  /** @param base - the first cell of the child */
  look(base: number, skill: number, day: number, result: number, exact: number): void {
    const cell = base + skill;
    const { lastLook } = this.to;
    if (lastLook[cell] === day) {
      if (this.disagreementIsMet && this.countsAsMet(cell, skill, day, result, exact)) return;
      this.sameDay(cell, day, exact, result === this.lastResult[skill]);
    } else {
      lastLook[cell] = day;
      this.lastResult[skill] = result;
      this.metBefore[skill] = this.to.metDay[cell] as number;
      this.withoutBefore[skill] = this.to.withoutDay[cell] as number;
      this.newDay(cell, day, result, exact);
    }
  }

  /** True where one of the results of the day so far is met and another is not: the day then counts as met. */
  private countsAsMet(cell: number, skill: number, day: number, result: number, exact: number): boolean {
    const wasMet = this.lastResult[skill] === RESULT.met;
    if (wasMet === (result === RESULT.met)) return false;
    if (!wasMet) {
      this.to.metDay[cell] = this.metBefore[skill] as number;
      this.to.withoutDay[cell] = this.withoutBefore[skill] as number;
      this.lastResult[skill] = RESULT.met;
      this.newDay(cell, day, RESULT.met, exact);
    }
    this.to.disagreed[cell] = 1;
    return true;
  }

  private newDay(cell: number, day: number, result: number, exact: number): void {
    const { metDay, withoutDay, state, disagreed } = this.to;
    disagreed[cell] = 0;
    if (metDay[cell] !== NO_DAY) state[cell] = STATE_AFTER[MET_BEFORE + result] as number;
    else {
      state[cell] = STATE_AFTER[result] as number;
      if (result < RESULT.met) withoutDay[cell] = day;
      else {
        metDay[cell] = day;
        this.to.exact[cell] = result === RESULT.met ? exact : 0;
      }
    }
  }

  private sameDay(cell: number, day: number, exact: number, agrees: boolean): void {
    const { metDay, withoutDay, state, disagreed } = this.to;
    if (disagreed[cell] === 1) return;
    const metThatDay = metDay[cell] === day;
    if (agrees) {
      if (metThatDay && state[cell] === STATE.met && exact === 1) this.to.exact[cell] = 1;
      return;
    }
    disagreed[cell] = 1;
    if (metThatDay) {
      metDay[cell] = NO_DAY;
      this.to.exact[cell] = 0;
    }
    state[cell] = metDay[cell] === NO_DAY ? STATE.notMet : STATE.lostToConfirm;
    if (metDay[cell] === NO_DAY) withoutDay[cell] = day;
  }
}
