import { uniformFloat64 } from "pure-rand/distribution/uniformFloat64";
import { uniformInt } from "pure-rand/distribution/uniformInt";
import { xoroshiro128plus } from "pure-rand/generator/xoroshiro128plus";

/** A seeded source of chance: the same seed and purpose give the same draws on every machine. */
export interface Chance {
  /** 0 (in) to 1 (out). */
  readonly share: () => number;
  /** A whole number from `from` to `to`, both in. */
  readonly whole: (from: number, to: number) => number;
  readonly yes: (probability: number) => boolean;
  readonly pick: <T>(from: readonly T[]) => T;
  /** One of `from`, with the weights of `weights`. */
  readonly weighted: <T>(from: readonly T[], weights: readonly number[]) => T;
  /** Close to a standard normal deviate: mean 0, variance 1, within -6 to 6. */
  readonly deviate: () => number;
}

/** Each purpose draws from a stream of its own, so that more referrals never move an observation. */
export function chanceOf(seed: number, purpose: number): Chance {
  const source = xoroshiro128plus((Math.imul(seed, 1_000_003) + Math.imul(purpose, 7919)) | 0);
  const share = (): number => uniformFloat64(source);
  const whole = (from: number, to: number): number => uniformInt(source, from, to);
  return {
    share,
    whole,
    yes: (probability) => share() < probability,
    pick: (from) => from[whole(0, from.length - 1)] as (typeof from)[number],
    weighted: (from, weights) => from[weightedIndex(weights, share())] as (typeof from)[number],
    deviate: () => twelveUniforms(share),
  };
}

/** Sums and products alone round alike everywhere, which logarithms do not. Source: Irwin (1927) and Hall (1927), Biometrika 19. */
function twelveUniforms(share: () => number): number {
  let sum = -6;
  for (let draw = 0; draw < 12; draw += 1) sum += share();
  return sum;
}

function weightedIndex(weights: readonly number[], share: number): number {
  let left = share * weights.reduce((sum, weight) => sum + weight, 0);
  for (let index = 0; index < weights.length; index += 1) {
    left -= weights[index] as number;
    if (left < 0) return index;
  }
  return weights.length - 1;
}
