import fc from "fast-check";
import { understand } from "../../../src/records/understanding/understand";
import type { Records } from "../../../src/records/records";
import { type Damage, DAMAGES } from "./damage";
import { figuresOf, planOf, readWith, settle } from "./figures";
import type { Program } from "./make-sheets";
import { MORE_PROGRAMS } from "./more-workbooks";
import { truthOf } from "./plan";
import { PROGRAMS } from "./workbooks";

const ALL = [...PROGRAMS, ...MORE_PROGRAMS];
const CHILDREN = 20;
const MOST_ACTS = 20;

/** How often each rule spoke that a person has to look at. */
function alarms({ findings }: Records): string[] {
  return findings
    .filter(({ severity }) => severity !== "note")
    .map(({ rule }) => rule)
    .sort();
}

function read(program: Program, seed: number, damages: readonly Damage[], draw: (below: number) => number) {
  const plan = planOf(program, seed, CHILDREN);
  const whole = program.workbook(plan);
  const workbook = damages.reduce((book, damage) => damage(book, understand(book).sheets, draw), whole);
  const { settled, acts } = settle(program, understand(workbook));
  const records = readWith(workbook, settled);
  return { figures: figuresOf(records, plan), truth: truthOf(plan), alarms: alarms(records), acts };
}

/** The same draws every time. */
function draws(seed: number): (below: number) => number {
  let state = seed;
  return (below) => {
    state = (state * 48_271) % 2_147_483_647;
    return state % below;
  };
}

const CASES = ALL.flatMap((program) =>
  Object.entries(DAMAGES).map(([name, damage]) => ({ title: `${program.name}: ${name}`, program, damage })),
);

test("there are enough variants", () => expect(CASES.length).toBeGreaterThanOrEqual(57));

test.each(CASES)("$title", ({ program, damage }) => {
  const plain = read(program, 7, [], draws(1));
  const damaged = read(program, 7, [damage], draws(11));
  expect(plain.figures).toEqual(plain.truth);
  expect(damaged.figures).toEqual(damaged.truth);
  expect(damaged.alarms).toEqual(plain.alarms);
  expect(damaged.acts).toBeLessThan(MOST_ACTS);
});

test("any of these changes together change no figure", () => {
  const together = fc.record({
    program: fc.constantFrom(...ALL.map(({ name }) => name)),
    damages: fc.shuffledSubarray(Object.keys(DAMAGES), { minLength: 2, maxLength: 4 }),
    seed: fc.integer({ min: 2, max: 5000 }),
  });
  fc.assert(
    fc.property(together, ({ program, damages, seed }) => {
      const one = ALL.find(({ name }) => name === program) as Program;
      const all = damages.map((name) => DAMAGES[name] as Damage);
      const { figures, truth } = read(one, 7, all, draws(seed));
      expect(figures).toEqual(truth);
    }),
    { numRuns: 15 },
  );
});
