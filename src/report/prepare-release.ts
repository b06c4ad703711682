import { isoOf } from "../age/day";
import { buildCohort } from "../cohort/cohort";
import type { Records } from "../records/records";
import { draftRelease, type DraftRelease } from "../release/draft/draft-release";
import { withoutIdleTotals } from "../release/draft/idle-totals";
import type { Ledger } from "../release/ledger";
import type { LedgerEntryBody } from "../release/ledger-entry";
import type { Solver } from "../release/linear-model";
import type { PreparedRelease, Refusal } from "../release/prepared";
import { NotSafe, protect, type Protected } from "../release/protect";
import { Contradiction, type CountSystem, NoAnswer } from "../release/system";
import { tieSets, type TiedSets } from "../release/ties";
import { notTestedInFull } from "../release/ties/not-covered";
import type { Settings } from "../settings/settings";
import { tableContext } from "../tables/context";
import { AgeEstimates } from "../tables/estimates";
import type { ReleasableId } from "../tables/table";

export interface ReleaseAsk {
  readonly settings: Settings;
  /** Ids of tables that may be released. */
  readonly tables: readonly ReleasableId[];
  /** Every earlier release; the new one is protected against all of them together. */
  readonly ledger: Ledger;
  readonly solver: Solver;
  readonly onStep?: (step: string) => void;
  /** True ends the search for a better pattern with the best found. */
  readonly isTimeUp?: () => boolean;
}

/**
 * Figures that can leave the program: tables drafted, tied to earlier releases, protected and attacked. Nothing is written.
 *
 * @throws {RangeError} when `by` names no column of Children
 * @throws {RangeError} when a table is asked for that may not be released
 */
export function prepareRelease(
  records: Records,
  { settings, tables, ledger, solver, isTimeUp, onStep = () => undefined }: ReleaseAsk,
): PreparedRelease | Refusal {
  const estimates = new AgeEstimates(tableContext(buildCohort(records, settings), settings, records));
  onStep("Counting, and tying counts to earlier releases");
  const drafted = draftRelease(estimates, tables, records.children.family);
  const { from, asOf } = estimates.context;
  const entry = { asOf: isoOf(asOf), from: isoOf(from), tables: [...tables], definition: drafted.definition };
  const present = { ...entry, minimumCell: settings.minimumCell };
  const earlier = ledger.entries.map(({ body }) => body);
  const tied = tieSets(drafted.system, earlier, present, drafted.drafting);
  const rule = { minimumCell: settings.minimumCell, method: settings.releaseMethod };
  try {
    onStep("Protecting small counts");
    const system = withoutIdleTotals(tied.system);
    const protectAgainst = (declared: CountSystem) =>
      protect({ drafts: drafted.drafts, drafted: drafted.system.cells.length, system, declared }, rule, {
        solver,
        ...(isTimeUp ? { isTimeUp } : {}),
        onRound: (round) => onStep(`Protecting small counts, attempt ${round}`),
      });
    const { found, changed } = protectedOver(tied, protectAgainst, ledger);
    return prepared(drafted, found, [...tied.notCovered, ...changed, ...notTestedInFull(tied.isFull)], entry);
  } catch (error) {
    if (error instanceof NoAnswer) return { places: [], proposals: [NO_ANSWER] };
    if (error instanceof Contradiction && ledger.entries.length > 0) return { places: [], proposals: [CHANGED] };
    if (!(error instanceof NotSafe)) throw error;
    return { places: error.places.map((place) => ({ place, repair: error.repair })), proposals: [error.message] };
  }
}

/** What an earlier release hid may be of other records than what is declared now: then only what the tables say is tied. */
function protectedOver(
  tied: TiedSets,
  protectAgainst: (declared: CountSystem) => Protected,
  ledger: Ledger,
): { readonly found: Protected; readonly changed: readonly string[] } {
  try {
    return { found: protectAgainst(withoutIdleTotals(tied.declared)), changed: [] };
  } catch (error) {
    if (!(error instanceof Contradiction) || ledger.entries.length === 0) throw error;
    return { found: protectAgainst(withoutIdleTotals(tied.system)), changed: [HIDDEN_CHANGED] };
  }
}

const HIDDEN_CHANGED =
  "Records changed since an earlier release, also where it held figures back: this release is tied to the earlier ones by what the tables say alone, and not by who can be counted where.";
const NO_ANSWER =
  "The test of this release ended without an answer, so nobody knows whether it is safe. Release fewer tables at once, or merge age groups.";
const CHANGED =
  "Records changed since an earlier release, so that its figures and these cannot both be true: leave out the tables that the change touches, or correct the records.";

function prepared(
  { system, flags }: DraftRelease,
  { rule, tables, protection, attack, knowledge }: Protected,
  notCovered: readonly string[],
  entry: Omit<LedgerEntryBody, "rule" | "cells" | "equations">,
): PreparedRelease {
  const shown = (cell: number) =>
    rule.method === "hide" && system.cells[cell]!.showing === "table" && knowledge.lower[cell] === knowledge.upper[cell]
      ? system.cells[cell]!.count
      : null;
  return {
    asOf: entry.asOf,
    from: entry.from,
    rule,
    tables,
    flags,
    notCovered,
    protection,
    attack: { attacked: attack.attacked, witnesses: attack.witnesses.length },
    entry: {
      ...entry,
      rule: { minimumCell: rule.minimumCell, method: rule.method, base: rule.base },
      cells: system.cells.map(({ key, place, atLeast }, cell) => ({
        key,
        place,
        shown: shown(cell),
        ...(atLeast === undefined ? {} : { atLeast }),
      })),
      equations: system.equations,
    },
  };
}
