/**
 * p values adjusted so that the chance of any false alarm among them stays under the level: sorted upwards, the k-th of
 * m is multiplied by m - k + 1, never below an earlier one, at most 1. In the order given.
 *
 * Source: Holm (1979), Scand J Stat 6:65-70.
 *
 * @throws {RangeError} when a p value is not between 0 and 1
 */
export function holm(p: readonly number[]): number[] {
  const adjusted = new Array<number>(p.length);
  let most = 0;
  ascending(p).forEach((index, rank) => {
    most = Math.max(most, Math.min(1, (p.length - rank) * p[index]!));
    adjusted[index] = most;
  });
  return adjusted;
}

/**
 * p values adjusted so that the expected share of false alarms among the alarms stays under the level: sorted upwards,
 * the k-th of m is multiplied by m / k, never above a later one, at most 1. In the order given.
 *
 * Source: Benjamini & Hochberg (1995), J R Stat Soc B 57:289-300.
 *
 * @throws {RangeError} when a p value is not between 0 and 1
 */
export function benjaminiHochberg(p: readonly number[]): number[] {
  const adjusted = new Array<number>(p.length);
  let least = 1;
  const order = ascending(p);
  for (let rank = order.length; rank >= 1; rank -= 1) {
    const index = order[rank - 1]!;
    least = Math.min(least, (p.length / rank) * p[index]!);
    adjusted[index] = least;
  }
  return adjusted;
}

function ascending(p: readonly number[]): number[] {
  p.forEach((value, index) => {
    if (!(value >= 0 && value <= 1)) throw new RangeError(`p value ${index + 1} is not between 0 and 1`);
  });
  return [...p.keys()].sort((a, b) => p[a]! - p[b]!);
}
