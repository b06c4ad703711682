import { ageMonths, isAtLeast } from "./ages";
import { boxAt, stateAt } from "./attainment";
import type { Entry } from "./groups";
import type { OracleInput, OracleRow, SkillRow } from "./input";
import { wilson } from "./met-by-band";

/** METHOD.md, section 6, table 10, one child and one skill after another. */
export function expectedByNow(input: OracleInput, followed: readonly Entry[]): OracleRow[] {
  const rows: OracleRow[] = [];
  for (const skill of input.skills) {
    const words = followed.map((entry) => wordFor(input, entry, skill));
    const row = tallied(words);
    const [lower, upper] = row.checked > 0 ? wilson(row.met, row.checked) : [null, null];
    const child = { childrenAllMet: null, childrenOneMissing: null, childrenMoreMissing: null, childrenNotKnown: null };
    rows.push({ skill: skill.skill, area: skill.area, kind: kindOf(skill), ...row, lower, upper, ...child });
  }
  for (const area of new Set(input.skills.map((skill) => skill.area))) {
    for (const kind of new Set(input.skills.filter((skill) => skill.area === area).map(kindOf))) {
      const skills = input.skills.filter((skill) => skill.area === area && kindOf(skill) === kind);
      const ofChildren = followed.map((entry) => skills.map((skill) => wordFor(input, entry, skill)));
      const boxes = ofChildren.map(boxOfChild);
      const inBox = (box: string): number => boxes.filter((each) => each === box).length;
      rows.push({
        skill: "all",
        area,
        kind,
        ...tallied(ofChildren.flat()),
        lower: null,
        upper: null,
        childrenAllMet: inBox("all met"),
        childrenOneMissing: inBox("one missing"),
        childrenMoreMissing: inBox("more missing"),
        childrenNotKnown: inBox("not known"),
      });
    }
  }
  return rows;
}

function kindOf({ expectedShare }: SkillRow): string {
  return expectedShare === null ? "none" : `${expectedShare}`;
}

/** One word for a child and a skill. */
function wordFor(input: OracleInput, { person, day }: Entry, skill: SkillRow): string {
  if (skill.opens === null && skill.closes === null) return "no window";
  const age = ageMonths(person, skill.ageBasis, input.settings, day);
  if (skill.opens !== null && !isAtLeast(age, skill.opens)) return "before";
  if (skill.closes === null || !isAtLeast(age, skill.closes)) return "within";
  if (laterOnes(input, skill).some((later) => stateAt(input, person, later, day) === "met")) return "met";
  const box = boxAt(input, person, skill, day);
  return box === "had at first look" || box === "gained here" ? "met" : box;
}

/** The skills that follow this one, those that follow them, and so on. */
function laterOnes(input: OracleInput, skill: SkillRow): SkillRow[] {
  const found = new Set<SkillRow>();
  const look = (at: SkillRow): void => {
    for (const each of input.skills) {
      if (each.follows !== at.skill || found.has(each)) continue;
      found.add(each);
      look(each);
    }
  };
  look(skill);
  return [...found];
}

function tallied(words: readonly string[]) {
  const count = (word: string): number => words.filter((each) => each === word).length;
  const past = {
    met: count("met"),
    notMet: count("not met"),
    lost: count("lost"),
    needsRecheck: count("out of date"),
    notChecked: count("not assessed"),
  };
  const checked = past.met + past.notMet + past.lost;
  return {
    children: words.length,
    beforeWindow: count("before"),
    inWindow: count("within"),
    pastWindow: checked + past.needsRecheck + past.notChecked,
    ...past,
    checked,
    shareMet: checked === 0 ? null : past.met / checked,
  };
}

function boxOfChild(words: readonly string[]): string {
  const expected = words.filter((word) => !["no window", "before", "within"].includes(word));
  const missing = expected.filter((word) => word === "not met" || word === "lost").length;
  if (expected.length === 0) return "nothing expected";
  if (missing > 1) return "more missing";
  if (expected.includes("out of date") || expected.includes("not assessed")) return "not known";
  return missing === 1 ? "one missing" : "all met";
}
