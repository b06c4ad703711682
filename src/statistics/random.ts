import { uniformFloat64 } from "pure-rand/distribution/uniformFloat64";
import { uniformInt } from "pure-rand/distribution/uniformInt";
import { xoroshiro128plus } from "pure-rand/generator/xoroshiro128plus";
import { normalQuantile } from "./distributions";

/**
 * Chance from a seed: the same numbers on every machine, in every browser.
 *
 * The stream is xoroshiro128+ with shifts 24, 16, 37 (Blackman & Vigna, 2021, ACM Trans Math Softw 47:36), as made by
 * pure-rand from a 32-bit seed. Whole numbers are drawn without bias by rejection, shares have 53 random bits.
 */
export interface Random {
  /** the next share, 0 included and 1 excluded */
  nextUnit(): number;
  /** the next whole number from 0 to `below` - 1, all equally likely */
  nextInt(below: number): number;
  /** the next number of a standard normal distribution, by inversion */
  nextNormal(): number;
}

/** @throws {RangeError} when the seed is not a whole number of 32 bits */
export function randomFrom(seed: number): Random {
  if (!Number.isInteger(seed) || seed < -(2 ** 31) || seed >= 2 ** 32) {
    throw new RangeError("randomFrom: a seed is a whole number from -2147483648 to 4294967295");
  }
  const generator = xoroshiro128plus(seed | 0);
  return {
    nextUnit: () => uniformFloat64(generator),
    nextInt: (below) => {
      if (!Number.isInteger(below) || below < 1) throw new RangeError("nextInt: needs a whole number above 0");
      return uniformInt(generator, 0, below - 1);
    },
    // half a step off the grid of 2^-53, so that neither end is ever asked of the quantile
    nextNormal: () => normalQuantile(uniformFloat64(generator) + 2 ** -54),
  };
}
