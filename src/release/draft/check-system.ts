import type { CountSystem } from "../system";

/**
 * Refuses counts that do not add up: a total that is not the sum of its parts protects nothing. Equations with a count
 * that nobody knows are passed over.
 *
 * @throws {RangeError} that names the places of the first such equation, never a count
 */
export function checkSystem({ cells, equations }: CountSystem): void {
  const odd = cells.find(({ count }) => count !== null && (!Number.isSafeInteger(count) || count < 0));
  if (odd) throw new RangeError(`A count must be a whole number of at least 0. This is not: ${odd.place}.`);
  for (const { terms, equals } of equations) {
    let left = -equals;
    let known = true;
    for (const { cell, coefficient } of terms) {
      const count = cells[cell]?.count ?? null;
      if (count === null) known = false;
      else left += coefficient * count;
    }
    if (!known || left === 0) continue;
    const places = terms.map(({ cell }) => cells[cell]?.place ?? "");
    throw new RangeError(`These counts do not add up, so nothing can be released: ${places.join("; ")}.`);
  }
}
