import { SKILLS } from "../../src/sample/skills";
import { CDC_AGES, COMMON_PRACTICE, WHO_WINDOWS } from "../published/skill-ages";

const skill = (id: string) => SKILLS.find((each) => each.id === id);

test.each(Object.entries(WHO_WINDOWS))("%s has the window of the WHO study", (id, [opens, closes]) => {
  expect(skill(id)).toMatchObject({ opensMonths: opens, closesMonths: closes, expectedShare: 0.99 });
  expect(skill(id)?.basis).toContain("WHO MGRS 2006");
});

test.each(Object.entries(CDC_AGES))("%s closes at the published age, and claims no opening", (id, { months }) => {
  expect(skill(id)).toMatchObject({ opensMonths: null, closesMonths: months, expectedShare: 0.75 });
  expect(skill(id)?.basis).toContain("75% or more");
});

test.each(Object.entries(COMMON_PRACTICE))("%s is common practice and claims no share", (id, closes) => {
  expect(skill(id)).toMatchObject({ opensMonths: null, closesMonths: closes, expectedShare: null });
  expect(skill(id)?.basis).toContain("common practice, no source");
});

test("every skill's age is in one of the three lists, and in one only", () => {
  const listed = [WHO_WINDOWS, CDC_AGES, COMMON_PRACTICE].flatMap((list) => Object.keys(list));
  expect(SKILLS.map((each) => each.id).sort()).toEqual(listed.sort());
});

test("hearing and seeing are named, by ids of the first nine months", () => {
  const of = (sense: string) => SKILLS.filter((each) => each.sense === sense).map((each) => each.id);
  expect(of("hearing").sort()).toEqual(["loud-sound", "own-name", "turn-to-voice"]);
  expect(of("seeing").sort()).toEqual(["study-toy", "watch-person"]);
});

test("six areas, each with skills of its own", () => {
  const areas = ["gross motor", "fine motor", "social-emotional", "cognitive", "speech", "sensory"];
  expect([...new Set(SKILLS.map((each) => each.area))]).toEqual(areas);
  expect(SKILLS.length).toBeGreaterThanOrEqual(55);
  expect(SKILLS.length).toBeLessThanOrEqual(70);
});

test("labels and ideas are there, differ, and fit a line", () => {
  expect(new Set(SKILLS.map((each) => each.label.toLowerCase())).size).toBe(SKILLS.length);
  expect(new Set(SKILLS.map((each) => each.tryTogether)).size).toBe(SKILLS.length);
  for (const each of SKILLS) {
    expect(each.label.length).toBeLessThan(70);
    expect(each.tryTogether).toMatch(/^[A-Z].{20,110}\.$/);
  }
});

test("a skill replaces an earlier one of the same area, and walking takes the place of crawling", () => {
  expect(skill("walk-alone")?.follows).toBe("crawl");
  expect(skill("run")?.follows).toBe("walk-alone");
  const chains = SKILLS.filter((each) => each.follows !== "");
  expect(chains.length).toBeGreaterThan(5);
  for (const each of chains) {
    const earlier = skill(each.follows);
    expect(earlier?.area).toBe(each.area);
    expect(earlier?.ages.middleMonths).toBeLessThan(each.ages.middleMonths);
  }
});

/**
 * What a family may be told to do. Common practice, no source; kept to what can do no harm, and each idea was read by itself. A
 * word that is harmless in one idea and not in another is refused in all.
 */
describe("ideas are safe for the age", () => {
  const words = (text: string): string[] => text.toLowerCase().match(/[a-z']+/g) ?? [];
  const NEVER = {
    "round the neck or wrist":
      "wrist neck ribbon ribbons string strings cord cords rope ropes lace laces yarn thread scarf necklace bracelet collar tie tied ties loop loops strap straps",
    "fits in a mouth":
      "small tiny little bead beads button buttons coin coins pebble pebbles marble marbles peg pegs crayon crayons magnet magnets battery batteries fridge chalks stone stones sticker stickers cap caps shell shells foam",
    "food to choke on":
      "pea peas nut nuts raisin raisins grape grapes apricot cherry berry berries popcorn candy sausage carrot apple seed seeds bread cracker crackers",
    "over the face": "balloon balloons bag bags foil wrap wrapper pillow pillows hood",
    "in water": "water tub pool bucket bath sink puddle hose",
    hot: "hot warm stove oven kettle iron candle fire steam cook cooking tea coffee",
    high: "high ladder stairs stair stool chair chairs bed swing swings windowsill counter couch shelf bench changing",
    "sharp or breaking": "scissors knife knives stick sticks pencil pencils glass needle",
    "alone or out of sight": "alone asleep sleeping crib",
  };
  const idea = SKILLS.map((each): [string, string] => [each.id, each.tryTogether]);

  test.each(Object.entries(NEVER))("nothing %s", (_, list) => {
    const refused = new Set(list.split(" "));
    expect(idea.filter(([, text]) => words(text).some((word) => refused.has(word)))).toEqual([]);
  });

  test("always with an adult, who is spoken to", () => {
    expect(idea.filter(([, text]) => !/\b(you|your|yourself|together)\b/i.test(text))).toEqual([]);
  });

  test("blocks, balls, toys to hold, rings and jars are large or soft", () => {
    const held = /\b(block|blocks|ball|balls|jar|teether|bear)\b/;
    for (const [, text] of idea)
      if (held.test(text) && !/big ball/.test(text)) expect(text).toMatch(/\b(large|soft)\b/);
  });

  test.each([
    ["Tie a bell to the wrist.", "round the neck or wrist"],
    ["Drop raisins in a jar.", "food to choke on"],
    ["Pour water in the tub.", "in water"],
    ["Blow up a balloon.", "over the face"],
  ])("%s would be refused", (text, kind) => {
    const refused = new Set(NEVER[kind as keyof typeof NEVER].split(" "));
    expect(words(text).some((word) => refused.has(word))).toBe(true);
  });

  test("food is soft, and eaten sitting down with somebody", () => {
    for (const [, text] of idea.filter(([, each]) => /\bfood|oatmeal\b/.test(each))) {
      expect(text).toMatch(/soft|mashed|thick oatmeal/);
      expect(text).toMatch(/together|yourself/);
    }
  });

  test("a baby who lies on the front is awake and watched", () => {
    for (const id of ["head-up", "elbow-prop", "straight-arms", "roll-both"]) {
      expect(skill(id)?.tryTogether).toMatch(/lie down|Sit on the floor|On the floor/);
    }
    expect(skill("head-up")?.tryTogether).toMatch(/awake/);
  });
});
