import { estimateAgeWhenMet, type AgeWhenMetRequest } from "../../src/statistics/age-when-met";
import { freireich1963 } from "../published/freireich-1963";
import { hyde1980 } from "../published/hyde-1980";
import { invented200 } from "../published/npsurv-invented";
import { exactOrLater, oneRowAChild } from "./columns";

const request = (after: number[], by: number[], rest: Partial<AgeWhenMetRequest> = {}): AgeWhenMetRequest => ({
  after: Float64Array.from(after),
  by: Float64Array.from(by),
  shares: [0.5],
  ages: [],
  ...rest,
});
const bootstrap = { level: 0.95, replicates: 200, seed: 20240229 };

describe("published", () => {
  test("exact ages and ages not yet reached: Kaplan-Meier, with R's quantiles and limits", () => {
    const { time, met, quantiles, steps } = freireich1963.sixMp;
    const { after, by } = exactOrLater(time, met);
    const found = estimateAgeWhenMet({ after, by, shares: quantiles.share, ages: [6], level: 0.95 });
    expect(found.method).toBe("Kaplan-Meier");
    expect(found.largestGradient).toBeNull();
    expect(found.percentiles).toEqual(
      quantiles.share.map((share, index) => ({
        share,
        age: quantiles.age[index],
        lower: quantiles.lower[index],
        upper: quantiles.upper[index],
      })),
    );
    expect(found.reason).toBe("fewer than 75% of the children were ever seen with the skill");
    expect(found.shareBy).toEqual([
      {
        age: 6,
        share: expect.closeTo(1 - steps.surviving[0]!, 12),
        lower: expect.closeTo(1 - steps.upper[0]!, 9),
        upper: expect.closeTo(1 - steps.lower[0]!, 9),
      },
    ]);
  });

  test("intervals: R's npsurv, with its certificate and a curve that holds all mass", () => {
    const { after, by } = oneRowAChild(invented200.after, invented200.by, invented200.count);
    const found = estimateAgeWhenMet({ after, by, shares: [0.5, 0.99], ages: [12, 40], ...bootstrap });
    expect(found.method).toBe("interval-censored");
    expect(found.largestGradient).toBeLessThanOrEqual(1e-9);
    expect(found.curve.map((row) => row.from)).toEqual(invented200.from);
    expect(found.curve.map((row) => row.to)).toEqual(invented200.to.map((age) => (age === Infinity ? null : age)));
    found.curve.forEach((row, index) => expect(row.mass).toBeCloseTo(invented200.mass[index]!, 8));
    expect(found.curve.at(-1)).toMatchObject({ to: null, shareTo: null });
    expect(found.percentiles[0]!.age).toBeCloseTo(12.781832433800394, 5); // npsurv, mass spread evenly (bootstrap.test.ts)
    expect(found.percentiles[1]).toMatchObject({ age: null, upper: null });
    expect(found.shareBy[1]).toEqual({ age: 40, share: null, lower: null, upper: null });
    expect(found.reason).toBe("fewer than 99% of the children were ever seen with the skill");
  });

  test("Hyde (1980), men: a curve that is used up early says so", () => {
    const rows = [...hyde1980.gender.keys()].filter((row) => hyde1980.gender[row] === 1);
    const { after, by } = exactOrLater(
      rows.map((row) => hyde1980.exit[row]!),
      rows.map((row) => hyde1980.met[row]!),
    );
    const entry = Float64Array.from(rows, (row) => hyde1980.entry[row]!);
    expect(estimateAgeWhenMet({ after, by, entry, shares: [0.5] }).reason).toContain("781 days");
  });
});

describe("by hand", () => {
  test("without a level there are no limits", () => {
    expect(estimateAgeWhenMet(request([100], [200], { ages: [150] }))).toMatchObject({
      method: "interval-censored",
      reason: null,
      percentiles: [{ share: 0.5, age: expect.closeTo(150, 4), lower: null, upper: null }],
      shareBy: [{ age: 150, share: 0.5, lower: null, upper: null }],
      curve: [{ from: 100, to: 200, mass: 1, shareTo: 1 }],
    });
    expect(estimateAgeWhenMet(request([5, 6, 9], [5, 6, Infinity])).percentiles[0]).toEqual({
      share: 0.5,
      age: 6,
      lower: null,
      upper: null,
    });
  });

  test("exact ages give rows with from = to, and what is left lies beyond the last look", () => {
    const { curve } = estimateAgeWhenMet(request([5, 7, 9], [5, Infinity, Infinity]));
    expect(curve).toEqual([
      { from: 5, to: 5, mass: expect.closeTo(1 / 3, 12), shareTo: expect.closeTo(1 / 3, 12) },
      { from: 9, to: null, mass: expect.closeTo(2 / 3, 12), shareTo: null },
    ]);
  });

  test("one child with an interval turns the method", () => {
    expect(estimateAgeWhenMet(request([5, 7], [5, 9])).method).toBe("interval-censored");
    expect(estimateAgeWhenMet(request([5, 9], [5, 9])).method).toBe("Kaplan-Meier");
  });

  test("half is worded as half, all as all", () => {
    const reasonOf = (shares: number[]) =>
      estimateAgeWhenMet(request([5, 7, 9], [6, Infinity, Infinity], { shares })).reason;
    expect(reasonOf([0.5, 0.9])).toBe("fewer than half of the children were ever seen with the skill");
    expect(reasonOf([1])).toBe("some children were never seen with the skill");
    expect(reasonOf([0.1])).toBeNull();
  });

  test("with entries the children seen with it are not all who had it, so the sentence is another", () => {
    const found = estimateAgeWhenMet(request([5, 7, 9], [5, Infinity, Infinity], { entry: new Float64Array(3) }));
    expect(found.reason).toBe("the share met does not reach half by the last check");
  });
});

describe("property", () => {
  test("same request, same answer", () => {
    const { after, by } = oneRowAChild(invented200.after, invented200.by, invented200.count);
    const asked = { after, by, shares: [0.25, 0.5], ages: [12], ...bootstrap };
    expect(estimateAgeWhenMet(asked)).toEqual(estimateAgeWhenMet(asked));
  });

  test("no number that is not a number or infinite leaves", () => {
    const requests = [
      request([0, 10], [Infinity, Infinity], { ages: [5], ...bootstrap }),
      request([0, 10, 3], [5, Infinity, 3], { shares: [0.1, 1], ages: [-5, 5, 1e6], ...bootstrap }),
      request([0, 10, 3], [0, Infinity, 3], { shares: [0.1, 1], ages: [-5, 5, 1e6], ...bootstrap }),
    ];
    for (const asked of requests) expect(notNumbers(estimateAgeWhenMet(asked))).toEqual([]);
  });
});

describe("refusal", () => {
  test.each([
    ["columns of different length", request([1, 2], [3])],
    ["an interval that ends before it starts", request([5], [4])],
    ["a start that is not a number", request([NaN], [4])],
    ["entries beside intervals", request([1], [4], { entry: new Float64Array(1) })],
    ["entries of another length", request([4], [4], { entry: new Float64Array(2) })],
    ["a share of 0", request([1], [4], { shares: [0] })],
    ["a share of 50", request([Infinity], [Infinity], { shares: [50] })],
    ["a level of 95", request([4], [4], { level: 95 })],
    ["limits of intervals without a seed", request([1], [4], { level: 0.95, replicates: 100 })],
    ["limits of intervals without replicates", request([1], [4], { level: 0.95, seed: 1 })],
  ])("%s", (_, asked) => {
    expect(() => estimateAgeWhenMet(asked)).toThrow(RangeError);
  });

  test("no child, and nobody with the skill, are null with a reason", () => {
    expect(estimateAgeWhenMet(request([], [], { ages: [9] }))).toEqual({
      method: null,
      reason: "no child was checked for this skill",
      percentiles: [{ share: 0.5, age: null, lower: null, upper: null }],
      shareBy: [{ age: 9, share: null, lower: null, upper: null }],
      curve: [],
      largestGradient: null,
    });
    expect(estimateAgeWhenMet(request([5, 9], [Infinity, Infinity], bootstrap))).toMatchObject({
      method: null,
      reason: "no child was seen with the skill",
      curve: [{ from: 9, to: null, mass: 1, shareTo: null }],
    });
  });

  test("the only child who met it was not watched before: null with a reason", () => {
    const found = estimateAgeWhenMet(request([5, 9], [5, Infinity], { entry: Float64Array.of(5, 0) }));
    expect(found).toMatchObject({ method: null, reason: "no child was seen to meet the skill while being watched" });
  });
});

function notNumbers(value: unknown): unknown[] {
  if (typeof value === "number") return Number.isFinite(value) ? [] : [value];
  return typeof value === "object" && value !== null ? Object.values(value).flatMap(notNumbers) : [];
}
