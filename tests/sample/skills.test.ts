import { SKILLS } from "../../src/sample/skills";
import { CDC_AGES, COMMON_PRACTICE, WHO_WINDOWS } from "../published/skill-ages";

const skill = (id: string) => SKILLS.find((each) => each.id === id);

test.each(Object.entries(WHO_WINDOWS))("%s has the window of the WHO study", (id, [opens, closes]) => {
  expect(skill(id)).toMatchObject({ opensMonths: opens, closesMonths: closes, expectedShare: 0.99 });
  expect(skill(id)?.basis).toContain("WHO MGRS 2006");
});

test.each(Object.entries(CDC_AGES))("at %s months: the CDC age as the close, and no opening", (months, ids) => {
  for (const id of ids) {
    expect(skill(id)).toMatchObject({ opensMonths: null, closesMonths: Number(months), expectedShare: 0.75 });
    expect(skill(id)?.basis).toContain("75% or more");
  }
});

test.each(Object.entries(COMMON_PRACTICE))("%s is common practice and claims no share", (id, [opens, closes]) => {
  expect(skill(id)).toMatchObject({ opensMonths: opens, closesMonths: closes, expectedShare: null });
  expect(skill(id)?.basis).toContain("common practice, no source");
});

test("every skill's age stands in one of the three lists", () => {
  const listed = [WHO_WINDOWS, COMMON_PRACTICE].flatMap((list) => Object.keys(list)).concat(...Object.values(CDC_AGES));
  expect(SKILLS.map((each) => each.id).sort()).toEqual(listed.sort());
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
  const chains = SKILLS.filter((each) => each.follows !== "");
  expect(chains.length).toBeGreaterThan(5);
  for (const each of chains) {
    const earlier = skill(each.follows);
    expect(earlier?.area).toBe(each.area);
    expect(earlier?.ages.middleMonths).toBeLessThan(each.ages.middleMonths);
  }
});
