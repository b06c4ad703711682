import { makeSample } from "../../src/sample/make-sample";
import { SKILLS } from "../../src/sample/skills";
import { CDC_AGES, WHO_WINDOWS } from "../published/skill-ages";

/** Many children, so that a share of 1% is seen: with 3,000 its standard error is 0.2%. */
const large = makeSample({ children: 3000, seed: 11 }).known;
const NEVER = 2_147_483_647;

/** Age in mean-length months counted from the due date, worked out here without the project's ages; of those not late. */
function correctedMonths(skillId: string): number[] {
  const skill = SKILLS.findIndex((each) => each.id === skillId);
  return large.children.flatMap((child, index) => {
    if (large.late[index] === 1) return [];
    const weeksShort = child.gestation.days !== null && child.gestation.days < 37 * 7;
    const due = child.birth + (weeksShort ? 280 - (child.gestation.days as number) : 0);
    const day = large.attained[index]?.[skill] as number;
    return day === NEVER ? [] : [(day - due) / (365.25 / 12)];
  });
}

const shareOf = (ages: readonly number[], holds: (age: number) => boolean): number =>
  ages.filter(holds).length / ages.length;

test.each(Object.entries(WHO_WINDOWS))(
  "%s: about 1% come before and 1% after the WHO window",
  (id, [opens, closes]) => {
    const ages = correctedMonths(id);
    const before = shareOf(ages, (age) => age < opens);
    const after = shareOf(ages, (age) => age > closes);
    expect(before).toBeGreaterThan(0.004);
    expect(before).toBeLessThan(0.018);
    expect(after).toBeGreaterThan(0.004);
    expect(after).toBeLessThan(0.018);
  },
);

test("about 4.3% never crawl, as in the WHO study", () => {
  const share = 1 - correctedMonths("crawl").length / correctedMonths("walk-alone").length;
  expect(share).toBeGreaterThan(0.03);
  expect(share).toBeLessThan(0.057);
});

/** "75% or more" is a floor. Up to 15 months no child is past the age at which correcting stops. */
test.each(Object.entries(CDC_AGES).filter(([, { months }]) => months <= 15))(
  "%s: three quarters or more do it by the published age",
  (id, { months }) => {
    if (SKILLS.find((each) => each.id === id)?.ageBasis !== "") return;
    expect(shareOf(correctedMonths(id), (age) => age <= months)).toBeGreaterThan(0.75);
  },
);

test("hearing and seeing come in nearly every child by the published age", () => {
  for (const id of ["loud-sound", "watch-person", "turn-to-voice", "study-toy", "own-name"]) {
    expect(shareOf(correctedMonths(id), (age) => age <= (CDC_AGES[id]?.months ?? 0))).toBeGreaterThan(0.95);
  }
});

test("a few children come to everything late", () => {
  const late = large.late.filter((each) => each === 1).length / large.children.length;
  expect(late).toBeGreaterThan(0.045);
  expect(late).toBeLessThan(0.075);
});

test("skills of one child go together, those of one area more so", () => {
  const sit = correctedMonths("sit-alone");
  expect(correlation(sit, correctedMonths("stand-alone"))).toBeGreaterThan(0.5);
  expect(correlation(sit, correctedMonths("coo"))).toBeGreaterThan(0.15);
  expect(correlation(sit, correctedMonths("coo"))).toBeLessThan(0.4);
});

test("about 12% are born before 37 weeks, some of them very early", () => {
  const known = large.children.flatMap((child) => child.gestation.days ?? []);
  const preterm = known.filter((days) => days < 259);
  expect(preterm.length / large.children.length).toBeGreaterThan(0.1);
  expect(preterm.length / large.children.length).toBeLessThan(0.14);
  expect(preterm.filter((days) => days < 196).length).toBeGreaterThan(10);
  expect(Math.min(...known)).toBeGreaterThanOrEqual(23 * 7);
  expect(Math.max(...known)).toBeLessThanOrEqual(41 * 7 + 6);
});

test("families hold two children: twins with one birth date, or siblings a year and more apart", () => {
  const births = new Map<string, number[]>();
  for (const child of large.children) {
    if (child.family !== "") births.set(child.family, [...(births.get(child.family) ?? []), child.birth]);
  }
  const apart = [...births.values()].filter((each) => each.length === 2).map(([a = 0, b = 0]) => Math.abs(a - b));
  expect(apart.length).toBeGreaterThanOrEqual(births.size - 1);
  expect(apart.filter((days) => days === 0).length).toBeGreaterThan(30);
  expect(apart.filter((days) => days > 365).length).toBeGreaterThan(30);
  expect(apart.filter((days) => days > 0 && days <= 365)).toEqual([]);
});

test("a few true losses, each after the skill was there", () => {
  expect(large.losses.length).toBeGreaterThan(10);
  expect(large.losses.length).toBeLessThan(0.05 * large.children.length);
  for (const loss of large.losses)
    expect(loss.from).toBeGreaterThan(large.attained[loss.child]?.[loss.skill] as number);
});

function correlation(xs: readonly number[], ys: readonly number[]): number {
  const n = xs.length;
  const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / n;
  const [mx, my] = [mean(xs), mean(ys)];
  const product = (as: readonly number[], ma: number, bs: readonly number[], mb: number): number =>
    as.reduce((sum, a, index) => sum + (a - ma) * ((bs[index] as number) - mb), 0);
  return product(xs, mx, ys, my) / Math.sqrt(product(xs, mx, xs, mx) * product(ys, my, ys, my));
}
