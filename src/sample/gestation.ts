import type { Chance } from "./chance";
import { PRETERM_SHARE } from "./program";

/** A gestation as the program wrote it down. */
export interface DrawnGestation {
  /** Null where it was not recorded. */
  readonly days: number | null;
  readonly written: string | number | null;
}

/** Ranges of completed weeks before term and how often each is drawn; more of the very early than among all births. */
const PRETERM_WEEKS = [
  [23, 27],
  [28, 31],
  [32, 33],
  [34, 36],
] as const;
const PRETERM_WEIGHTS = [12, 14, 14, 60];

/** Twins come early far more often, so single births a little less, for the stated share over all. */
const TWIN_PRETERM_SHARE = 0.55;
const SINGLE_PRETERM_SHARE = PRETERM_SHARE - 0.035;
/** Steps of the golden ratio spread evenly over 0 to 1, so that a small program too has about the stated share. */
const GOLDEN_STEP = 0.618033988749895;

/** Draws gestations one birth after another. */
export function gestationDraws(chance: Chance): (twins: boolean) => DrawnGestation {
  let place = chance.share();
  return (twins) => {
    if (twins) return drawGestation(chance, chance.share() / TWIN_PRETERM_SHARE);
    place = (place + GOLDEN_STEP) % 1;
    return drawGestation(chance, place / SINGLE_PRETERM_SHARE);
  };
}

/** @param place - below 1 for a preterm birth, the earlier the smaller */
function drawGestation(chance: Chance, place: number): DrawnGestation {
  const weeks = place < 1 ? pretermWeeks(chance, place) : chance.weighted([37, 38, 39, 40, 41], [10, 18, 30, 28, 14]);
  const days = weeks * 7 + chance.whole(0, 6);
  if (place >= 1 && chance.yes(0.03)) return { days: null, written: null };
  return writtenAs(
    chance.weighted(["plus", "letters", "sevenths", "days", "weeks"] as const, [50, 14, 10, 10, 16]),
    days,
  );
}

function pretermWeeks(chance: Chance, place: number): number {
  let left = place * 100;
  const range = PRETERM_WEEKS.find((_, index) => (left -= PRETERM_WEIGHTS[index] as number) < 0) ?? PRETERM_WEEKS[3];
  return chance.whole(range[0], range[1]);
}

type Notation = "plus" | "letters" | "sevenths" | "days" | "weeks";

/** Where only whole weeks were written down, that is all that the program knows. */
function writtenAs(notation: Notation, days: number): DrawnGestation {
  const weeks = Math.floor(days / 7);
  const rest = days - weeks * 7;
  if (notation === "weeks") return { days: weeks * 7, written: weeks };
  if (notation === "days") return { days, written: days };
  if (notation === "letters") return { days, written: rest === 0 ? `${weeks}w` : `${weeks}w${rest}d` };
  return { days, written: notation === "plus" ? `${weeks}+${rest}` : `${weeks} ${rest}/7` };
}
