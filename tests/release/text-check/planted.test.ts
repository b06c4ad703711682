import { check } from "./program";

/** Forty invented paragraphs, each with one mistake planted once. `[[...]]` marks it; the marks are taken out before the check. */
const PLANTED: readonly [rule: string, paragraph: string][] = [
  // What the release holds back.
  [
    "held back",
    "As of September 30, 2026, of the children of 12 to <18 months, [[42]] of 80 children checked said three words.",
  ],
  [
    "held back",
    "In Q3 2026, 84 children were checked for walking. [[51]] children aged 18 to <24 months walked alone.",
  ],
  [
    "held back",
    "By September 2026, 47 of 66 referrals were found eligible (71.2%). Plans were made for [[38]] referrals.",
  ],
  ["held back", "By September 2026, 66 of 73 referrals were evaluated. Of 47 eligible, [[80.9%]] (n = 47) had a plan."],
  [
    "held back",
    "In the third quarter of 2026, 61 of 84 children walked alone (72.6%), and at the next age [[92.7%]] did.",
  ],
  ["small count", "In Q3 2026, 61 of 84 children walked alone. [[Three children]] moved away."],
  [
    "small count",
    "As of September 30, 2026 we followed 96 children of one to one and a half years; [[9 infants]] were new.",
  ],
  [
    "held back",
    "As of September 30, 2026, 96 children were in that age group, and [[seven children]] had lost their words.",
  ],
  // Names and codes.
  ["names somebody", "In Q3 2026, 61 of 84 children walked alone. [[WB-0042]] took her first steps in our room."],
  ["names somebody", "In Q3 2026, 61 of 84 children walked alone, among them child [[wb 42]], who did so at home."],
  ["names somebody", "In Q3 2026, 66 of 73 referrals were evaluated. Record [[20417]] shows how long it can take."],
  ["names somebody", "By September 2026, 47 of 66 referrals were eligible. See child no. [[61]] for the file."],
  ["names somebody", "In Q3 2026, 61 of 84 children walked alone. The family [[F19]] wrote to thank us."],
  ["names somebody", "In Q3 2026, 61 of 84 children walked alone. Therapist [[T-07]] saw most of them."],
  ["names somebody", "In Q3 2026, 61 of 84 children walked alone. [[Dora]] visits each home every week."],
  ["names somebody", "In Q3 2026, 61 of 84 children walked alone. Observer [[OB3]] checked twice."],
  ["names somebody", "In Q3 2026, 61 of 84 children walked alone. Our site [[Mill Street]] opened a second room."],
  ["names somebody", "In Q3 2026, 61 of 84 children walked alone. Families at [[Quarry]] asked for evening visits."],
  ["names somebody", "In Q3 2026, 61 of 84 children walked alone, also where families speak [[Portuguese]] at home."],
  ["names somebody", "In Q3 2026, 61 of 84 children walked alone. [[The only girl]] in the baby group did so early."],
  ["names somebody", "In Q3 2026, 66 of 73 referrals were evaluated. [[The twins]] were seen on the same day."],
  ["names somebody", "In Q3 2026, 66 of 73 referrals were evaluated. [[One boy who]] waited long is in school now."],
  ["names somebody", "In Q3 2026, 61 of 84 children walked alone. [[Her mother]] filmed the first steps."],
  // Dates.
  ["fine date", "In Q3 2026, 61 of 84 children walked alone. A referral of [[August 14, 2026]] was closed at once."],
  ["fine date", "In Q3 2026, 66 of 73 referrals were evaluated, the last on [[8/21/2026]]."],
  ["fine date", "In Q3 2026, 66 of 73 referrals were evaluated; most came [[in July]]."],
  ["fine date", "By September 2026, 66 of 73 referrals were evaluated. The program began in [[May 2026]]."],
  // Numbers of no table, or of another row.
  ["no table", "As of September 30, 2026, [[62 of 84]] children of that age walked alone."],
  ["no table", "In Q3 2026, 61 of 84 children walked alone. We served [[312]] children in all."],
  ["no table", "In Q3 2026, 61 of 84 children walked alone. Half did so by [[13.6]] months."],
  ["arithmetic", "In Q3 2026, [[61 of 84 children (76.2%)]] walked alone."],
  ["arithmetic", "By September 2026, [[78%, or 47 of the 66]] referrals, were eligible."],
  ["other row", "As of September 30, 2026, in speech at 12 to <18 months, [[61 of 84]] children had the skill."],
  ["other row", "By September 2026, [[66 of 73]] referrals were eligible."],
  // Percents without a base, shares in words, no period.
  ["no base", "In Q3 2026 we checked 84 children for walking. [[72.6%]] walked alone."],
  ["no base", "As of September 30, 2026, [[90.4%]] of referrals were evaluated."],
  ["in words", "In Q3 2026 we followed 96 children of this age. [[Most of the children]] walked alone."],
  ["no period", "[[]]Of 84 children checked, 61 of 84 children walked alone (72.6%)."],
  // Cause.
  ["cause", "In Q3 2026, 61 of 84 children walked alone, [[thanks to]] our weekly visits."],
  ["cause", "In Q3 2026, 66 of 73 referrals were evaluated. The number of words [[doubled]]."],
];

const CLEAN: readonly string[] = [
  "As of September 30, 2026, 61 of 84 children of 12 to <18 months who were checked walked several steps alone (72.6%).",
  "Between July 1 and September 30, 2026, 66 of 73 referrals were evaluated (90.4%), and 47 of 66 were found eligible.",
  "In the third quarter of 2026, of 58 children of 18 to <24 months, 55 were checked for walking.",
  "We work at 2 sites with 12 therapists. In Q3 2026, 33 of 49 children checked at 18 to <24 months said three words (67.3%).",
  "From July to September 2026, 73 referrals were made, and 66 of them were evaluated (66 of 73, 90.4%).",
  "These figures are for September 30, 2026. Rule: fewer than 11 is held back (45 CFR 164.514). 61 of 84 children walked alone.",
  "By September 2026, 72.6% (61 of 84) walked alone. The source expects 99 in 100 by 17.6 months in any case, which is no figure of ours.",
  "In Q3 2026 the middle referral waited 24 days for its evaluation; 66 of 73 referrals got one.",
  "We ask for $45,000 for 2027. In 2026-Q3, 96 children of 12 to <18 months were in the program; 84 were checked for walking.",
  "Our staff visit each family twice a month. As of September 30, 2026, 66 of the 73 referrals had been evaluated.",
];

test("there are forty paragraphs with one mistake each, and ten with none", () => {
  expect(PLANTED).toHaveLength(40);
  expect(CLEAN).toHaveLength(10);
});

test.each(PLANTED)("%s: %s", (rule, marked) => {
  const start = marked.indexOf("[[");
  const text = marked.replace("[[", "").replace("]]", "");
  const end = marked.indexOf("]]") - 2;
  const findings = check(text).filter(({ kind }) => kind !== "agrees");
  const hit = findings.find(
    (each) => each.rule === rule && (each.sentence === null || (each.start < end && each.end > start)),
  );
  expect({ findings, hit: hit !== undefined }).toMatchObject({ hit: true });
  // The mistake stands alone: nothing else in the paragraph is called wrong, but a percent beside a held back number may be.
  expect(findings.filter(({ kind, start: from, end: to }) => kind === "leak" && (to <= start || from >= end))).toEqual(
    [],
  );
});

test("ten clean paragraphs give one false alarm at most, and no leak", () => {
  const alarms = CLEAN.flatMap((text) =>
    check(text)
      .filter(({ kind }) => kind === "leak" || kind === "mend")
      .map((each) => ({ text, ...each })),
  );
  expect(alarms.filter(({ kind }) => kind === "leak")).toEqual([]);
  expect(alarms.slice(1)).toEqual([]);
});

test("the end of a quarter is no finer than the quarter", () => {
  const text =
    "As of September 30, 2026, 61 of 84 children walked alone. It was much the same at the end of September 2025.";
  expect(check(text).filter(({ rule }) => rule === "fine date")).toEqual([]);
  expect(check(text.replace("September 2025", "August 2025")).map(({ rule }) => rule)).toContain("fine date");
});

/** The children's 49 and 58 are shown in one table, and the same numbers are held back in another. */
describe("a number that one table shows and another holds back", () => {
  test.each([
    "In Q3 2026, 58 children of 18 to <24 months were in the program.",
    "As of September 30, 2026, 49 children were checked for words at 18 to <24 months.",
  ])("agrees where the sentence speaks of the first: %s", (text) => {
    expect(check(text).map(({ kind }) => kind)).toEqual(["agrees"]);
  });

  test.each([
    "In Q3 2026, 58 children were rated.",
    "As of September 30, 2026, 49 children were better at being with others.",
    "As of September 30, 2026, 84 children left with an exit rating.",
  ])("is a leak where it speaks of the other: %s", (text) => {
    expect(check(text)[0]).toMatchObject({ kind: "leak", rule: "held back" });
  });
});
