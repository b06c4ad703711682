import { attack, type Attack } from "./attack";
import { derived } from "./derived";
import { CannotProtect, hide, type HideOptions } from "./hide/hide";
import { hold } from "./hide/hold";
import type { Knowledge } from "./knowledge";
import { rangeCounts } from "./ranges";
import { type DraftTable, HIDDEN, type ReleasedTable } from "./release-table";
import { knownTo, type PrintedCount, reveal } from "./reveal";
import type { ProtectionSummary, ReleaseRule } from "./prepared";
import { CannotRound, knownRounded, roundCounts } from "./round";
import { type CountSystem, isSecret } from "./system";

/** Tables as they may leave, with how they were protected. */
export interface Protected {
  readonly rule: ReleaseRule;
  readonly tables: readonly ReleasedTable[];
  readonly protection: ProtectionSummary;
  readonly attack: Attack;
  readonly isHidden: (cell: number) => boolean;
  /** What an outsider knows of each cell who reads the tables. */
  readonly knowledge: Knowledge;
}

/** Places that cannot be protected in the way asked for. */
export class NotSafe extends Error {
  constructor(
    readonly places: readonly string[],
    readonly repair: string,
  ) {
    super(repair);
  }
}

/** Counts to protect, those of this release first; the rest are of earlier ones. */
export interface ToProtect {
  readonly drafts: readonly DraftTable[];
  /** How many cells are of this release; they stand at the same places in both systems. */
  readonly drafted: number;
  /** As the tables say it: what a pattern is looked for in. */
  readonly system: CountSystem;
  /** With all that the counts say of one another: what is attacked. */
  readonly declared: CountSystem;
}

/**
 * Protects drafts in the way the rule asks for, and attacks the outcome.
 *
 * @throws {NotSafe} when the attack proves a small count whatever is done
 */
export function protect(
  asked: ToProtect,
  rule: Pick<ReleaseRule, "minimumCell" | "method">,
  options: HideOptions,
): Protected {
  const { drafts, drafted } = asked;
  const system = asked.declared;
  const way = { hide: byHiding, round: byRounding, ranges: byRanges }[rule.method];
  const { base, mostOff, printed, knowledge, found, loss, bound, stoppedEarly } = way(asked, rule.minimumCell, options);
  if (found.disclosures.length > 0) throw new NotSafe(placesOf(system, found), REPAIR[rule.method]);
  const isOwn = (cell: number) => cell < drafted && system.cells[cell]!.showing === "table";
  const own = [...system.cells.keys()].filter(isOwn);
  const isHidden = (cell: number) => printed(cell) === HIDDEN;
  const hidden = own.filter(isHidden);
  return {
    rule: { ...rule, base, ...(mostOff !== undefined && { mostOff }) },
    tables: reveal(drafts, printed, knownTo(derived(system, knowledge)), base === null ? 0 : LEAST_ROUNDED_BASE),
    protection: {
      counts: own.length,
      hidden: hidden.length,
      small: hidden.filter((cell) => isSecret(system.cells[cell]!)).length,
      loss,
      bound,
      stoppedEarly,
    },
    attack: found,
    isHidden,
    knowledge,
  };
}

const REPAIR = {
  hide: "Earlier releases and this one give it away together: leave this table out, group it as before, or merge age groups.",
  alone:
    "Holding figures back is not enough here: leave this table out, group it by fewer columns, or merge age groups.",
  round: "The rounded counts give it away: choose hiding, or ranges.",
  ranges: "The ranges give it away: choose hiding, or merge age groups.",
} as const;

/** A percent of rounded counts from a smaller base can be off by more than a reader would think (our choice). */
export const LEAST_ROUNDED_BASE = 200;

interface Way {
  readonly base: number | null;
  readonly mostOff?: number;
  readonly printed: PrintedCount;
  readonly knowledge: Knowledge;
  readonly found: Attack;
  readonly loss: number;
  readonly bound: number;
  readonly stoppedEarly: boolean;
}

function byHiding({ system, declared, drafted }: ToProtect, _minimum: number, options: HideOptions): Way {
  try {
    const { hidden: first, loss, bound, stoppedEarly } = hide(system, options);
    const held = hold(declared, first.subarray(0, drafted), (cell) => cell < drafted, options);
    const printed: PrintedCount = (cell) => (held.hidden[cell] ? HIDDEN : declared.cells[cell]!.count);
    const more = [...held.hidden.keys()].filter((cell) => held.hidden[cell] !== (first[cell] ?? 0) && cell < drafted);
    const lostToo = more.reduce((sum, cell) => sum + declared.cells[cell]!.loss, 0);
    const { knowledge, attack: found } = held;
    return { base: null, printed, knowledge, found, loss: loss + lostToo, bound, stoppedEarly };
  } catch (error) {
    if (!(error instanceof CannotProtect)) throw error;
    throw new NotSafe(
      error.cells.map((cell) => (system.cells[cell] ?? declared.cells[cell])!.place),
      system.cells.length > drafted ? REPAIR.hide : REPAIR.alone,
    );
  }
}

/**
 * The base is the least multiple of 5 above the minimum: with a smaller one a figure such as 5 would say that a count is
 * small, and so would a 0 in a row that must hold somebody.
 */
function byRounding({ system, declared, drafted }: ToProtect, minimum: number, { solver, isTimeUp }: HideOptions): Way {
  const base = 5 * (Math.floor(minimum / 5) + 1);
  try {
    const { printed, within } = roundCounts(system, base, solver, isTimeUp);
    const knowledge = knownRounded(declared, printed.subarray(0, drafted), within);
    const found = attack(declared, knowledge, solver);
    return { base, mostOff: within, printed: (cell) => printed[cell] as number, knowledge, found, ...NOTHING_LOST };
  } catch (error) {
    if (!(error instanceof CannotRound)) throw error;
    throw new NotSafe([], error.message);
  }
}

function byRanges({ declared }: ToProtect, minimum: number, { solver, isTimeUp }: HideOptions): Way {
  const attacked = (known: Knowledge) => attack(declared, known, solver);
  const { printed, knowledge, attack: found } = rangeCounts(declared, minimum, attacked, isTimeUp);
  return { base: null, printed: (cell) => printed[cell] ?? HIDDEN, knowledge, found, ...NOTHING_LOST };
}

const NOTHING_LOST = { loss: 0, bound: 0, stoppedEarly: false };

function placesOf(system: CountSystem, { disclosures }: Attack): string[] {
  return disclosures.map(({ cell }) => system.cells[cell]!.place);
}
