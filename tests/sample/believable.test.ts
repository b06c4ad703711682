import { makeSample } from "../../src/sample/make-sample";
import { SKILLS } from "../../src/sample/skills";

/** What a therapist would notice at once in the records, looked for by plain counting. */
const sample = makeSample({ children: 240, seed: 7 });
const { observations, losses, attained, children } = sample.known;

type Look = (typeof observations)[number];
const skillOf = (id: string): number => SKILLS.findIndex((skill) => skill.id === id);

/** Every look at one skill of one child, in order of day, by `child skill`. */
const looksOf = new Map<string, Look[]>();
for (const look of observations) {
  const key = `${look.child} ${look.skill}`;
  looksOf.set(key, [...(looksOf.get(key) ?? []), look]);
}
for (const looks of looksOf.values()) looks.sort((a, b) => a.day - b.day);

/** The steps that lead to a skill, near and far. */
function stepsTo(id: string): string[] {
  const { follows, after } = SKILLS[skillOf(id)]!;
  const near = [...(follows === "" ? [] : [follows]), ...after];
  return [...new Set(near.flatMap((step) => [step, ...stepsTo(step)]))];
}

test("skills come in order within a chain, in every child", () => {
  for (const days of attained) {
    for (const [index, skill] of SKILLS.entries()) {
      for (const step of stepsTo(skill.id)) {
        const before = days[skillOf(step)]!;
        if (step === "crawl" && before > 2_000_000) continue;
        expect(before).toBeLessThanOrEqual(days[index]!);
      }
    }
  }
});

test("nobody is said to do a later step while, at the last look, an earlier one is missing", () => {
  const missing = [...looksOf].flatMap(([key, looks]) => {
    const last = looks.at(-1)!;
    if (last.result !== "met") return [];
    const child = key.split(" ")[0]!;
    return stepsTo(SKILLS[last.skill]!.id)
      .filter((step) => step !== "crawl")
      .filter((step) => !losses.some((loss) => loss.child === Number(child) && loss.skill === skillOf(step)))
      .filter((step) => {
        const own = looksOf.get(`${child} ${skillOf(step)}`) ?? [];
        const day = Math.max(...own.map((look) => look.day));
        return own.some((look) => look.day === day && look.result !== "met") && day >= last.day;
      });
  });
  expect(missing).toEqual([]);
});

test("early skills are not left waiting when later ones are there", () => {
  const left = [...looksOf].filter(([key, looks]) => {
    const last = looks.at(-1)!;
    if (last.result === "met" || SKILLS[last.skill]!.id === "crawl") return false;
    const later = SKILLS.filter(({ id }) => stepsTo(id).includes(SKILLS[last.skill]!.id));
    const child = key.split(" ")[0]!;
    return later.some(({ id }) => looksOf.get(`${child} ${skillOf(id)}`)?.some((look) => look.result === "met"));
  });
  expect(left.length).toBeLessThan(0.002 * looksOf.size);
});

test("what is recorded as lost was truly lost, and losses are rare and of words, gestures and games", () => {
  const lost = observations.filter((look) => look.result === "lost");
  expect(lost.length).toBeGreaterThan(3);
  expect(new Set(lost.map((look) => look.child)).size).toBeLessThan(0.03 * children.length);
  for (const look of lost) {
    expect(
      losses.some(({ child, skill, from }) => child === look.child && skill === look.skill && from <= look.day),
    ).toBe(true);
    expect(["speech", "social-emotional"]).toContain(SKILLS[look.skill]!.area);
  }
});

test("no skill comes and goes: a look without a skill that was there before is a loss, a dispute or crawling", () => {
  const wavering = [...looksOf.values()].filter((looks) => {
    const [one] = looks;
    const met = looks.find(
      (look) =>
        look.result === "met" && looks.every((each) => each.day !== look.day || each === look || each.result === "met"),
    );
    if (!one || !met || SKILLS[one.skill]!.id === "crawl") return false;
    if (losses.some(({ child, skill }) => child === one.child && skill === one.skill)) return false;
    return looks.some((look) => look.day > met.day && look.result !== "met");
  });
  expect(wavering).toEqual([]);
});

test("looks cluster in visits: most days with a look have several, and reviews have many", () => {
  const perVisit = new Map<string, number>();
  for (const { child, day, observer } of observations) {
    const key = `${child} ${day} ${observer}`;
    perVisit.set(key, (perVisit.get(key) ?? 0) + 1);
  }
  const sizes = [...perVisit.values()];
  const inReviews = sizes.filter((size) => size >= 8).reduce((sum, size) => sum + size, 0);
  expect(inReviews / observations.length).toBeGreaterThan(0.6);
  expect(sizes.filter((size) => size === 1).length / sizes.length).toBeLessThan(0.12);
});

test("hearing and seeing are checked on the first visit, whatever the age", () => {
  const senses = SKILLS.filter((skill) => skill.sense !== "" && skill.closesMonths! <= 4);
  const firstDay = new Map<number, number>();
  for (const { child, day } of observations) firstDay.set(child, Math.min(firstDay.get(child) ?? Infinity, day));
  const old = [...firstDay].filter(([child, day]) => day - children[child]!.clock.correctedBirth > 180);
  expect(old.length).toBeGreaterThan(60);
  const checked = old.filter(([child, day]) =>
    senses.every(({ id }) => looksOf.get(`${child} ${skillOf(id)}`)?.some((look) => look.day === day)),
  );
  expect(checked.length / old.length).toBeGreaterThan(0.9);
});

test("a sign that a skill is missing stands only where it is", () => {
  const signs = sample.tables.find((table) => table.name === "Signs")!.rows;
  const childOf = new Map(children.map((child, index) => [child.id, index]));
  const of = { "rolls neither way": "roll-both", "does not reach for what is close by": "reach-toy" };
  for (const [sign, skill] of Object.entries(of)) {
    const present = signs.filter((row) => row[2] === sign && row[3] === "present");
    for (const [id, day] of present) {
      expect(attained[childOf.get(id as string)!]![skillOf(skill)]!).toBeGreaterThan(day as number);
    }
  }
});
