import fc from "fast-check";
import { quantileOfSorted } from "../../src/statistics/quantile";
import { randomFrom } from "../../src/statistics/random";

/** xoroshiro128+ with shifts 24, 16, 37 in 64-bit whole numbers, from Blackman & Vigna's public-domain C code (memory). */
function* xoroshiro(state0: bigint, state1: bigint): Generator<number> {
  const word = (value: bigint) => BigInt.asUintN(64, value);
  const turned = (value: bigint, by: bigint) => word((value << by) | (value >> (64n - by)));
  for (;;) {
    yield Number(BigInt.asIntN(32, state0 + state1));
    const both = state0 ^ state1;
    state0 = word(turned(state0, 24n) ^ both ^ (both << 16n));
    state1 = turned(both, 37n);
  }
}

describe("published", () => {
  test("shares are made of the published stream: 26 and 27 low bits of two numbers", () => {
    const seed = 20240229n;
    const stream = xoroshiro((0xffffffffn << 32n) | BigInt.asUintN(32, ~seed), seed << 32n);
    const random = randomFrom(20240229);
    for (let draw = 0; draw < 1000; draw += 1) {
      const high = stream.next().value & 0x3ffffff;
      const low = stream.next().value & 0x7ffffff;
      expect(random.nextUnit()).toBe((high * 2 ** 27 + low) / 2 ** 53);
    }
  });
});

describe("property", () => {
  test("the same seed gives the same numbers, another seed others", () => {
    const ten = (seed: number) =>
      Array.from(
        { length: 10 },
        (
          (random) => () =>
            random.nextInt(1000)
        )(randomFrom(seed)),
      );
    expect(ten(7)).toEqual(ten(7));
    expect(ten(7)).not.toEqual(ten(8));
  });

  test("whole numbers stay in range and come about equally often", () => {
    const random = randomFrom(1);
    const counts = new Array<number>(6).fill(0);
    for (let draw = 0; draw < 60_000; draw += 1) counts[random.nextInt(6)]! += 1;
    // five standard deviations of a binomial count with 60,000 draws and 1/6
    counts.forEach((count) => expect(Math.abs(count - 10_000)).toBeLessThan(5 * Math.sqrt(60_000 * (1 / 6) * (5 / 6))));
  });

  test("normal numbers have mean 0, variance 1 and 2.5% above 1.96", () => {
    const random = randomFrom(2);
    const draws = Array.from({ length: 40_000 }, () => random.nextNormal());
    const mean = draws.reduce((sum, draw) => sum + draw, 0) / draws.length;
    expect(Math.abs(mean)).toBeLessThan(5 / Math.sqrt(40_000));
    expect(draws.reduce((sum, draw) => sum + (draw - mean) ** 2, 0) / draws.length).toBeCloseTo(1, 1);
    expect(draws.filter((draw) => draw > 1.959964).length / draws.length).toBeCloseTo(0.025, 2);
  });
});

describe("refusal", () => {
  test.each([1.5, NaN, Infinity, 2 ** 32, -(2 ** 31) - 1])("a seed of %d", (seed) => {
    expect(() => randomFrom(seed)).toThrow(RangeError);
  });

  test.each([0, -1, 2.5])("whole numbers below %d", (below) => {
    expect(() => randomFrom(1).nextInt(below)).toThrow(RangeError);
  });
});

describe("quantile of type 7", () => {
  /** quantile(c(3, 6, 7, 8, 8, 9, 10, 13, 15, 16, 20), c(0.025, 0.25, 0.5, 0.9)), R 4.2.2 */
  test("agrees with R", () => {
    const values = Float64Array.of(3, 6, 7, 8, 8, 9, 10, 13, 15, 16, 20);
    const shares = [0.025, 0.25, 0.5, 0.9];
    expect(shares.map((share) => quantileOfSorted(values, share))).toEqual([3.75, 7.5, 9, 16]);
  });

  test("between a number and Infinity lies Infinity, and a place on a number is that number", () => {
    const values = Float64Array.of(1, 2, Infinity);
    expect([0.5, 0.6, 1].map((share) => quantileOfSorted(values, share))).toEqual([2, Infinity, Infinity]);
  });

  test("it lies between the smallest and the largest", () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -1e6, max: 1e6, noNaN: true }), { minLength: 1 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (numbers, share) => {
          const sorted = Float64Array.from(numbers).sort();
          const quantile = quantileOfSorted(sorted, share);
          expect(quantile).toBeGreaterThanOrEqual(sorted[0]!);
          expect(quantile).toBeLessThanOrEqual(sorted.at(-1)!);
        },
      ),
      { seed: 6 },
    );
  });
});
