import { fleschKincaid } from "flesch-kincaid";
import { syllable } from "syllable";
import { makeSample } from "../../../src/sample/make-sample";
import { sampleSheets } from "../../../src/sample/sample-sheets";
import { buildCohort } from "../../../src/cohort/cohort";
import { readRecords } from "../../../src/records/read-records";
import { childPage } from "../../../src/report/pages/child-page";
import { STATE } from "../../../src/cohort/state";
import { pageOf } from "../../../src/report/pages/make-page";
import { NobodyOfThatName } from "../../../src/report/pages/nobody";
import { therapistPage } from "../../../src/report/pages/therapist-page";
import type { Concerns } from "../../../src/tables/caseload/concerns";
import { concernsOfFollowed } from "../../../src/tables/caseload/followed";
import { type TableContext, tableContext } from "../../../src/tables/context";
import type { SheetOut } from "../../../src/workbook/sheets";
import { asRead } from "../../sample/as-read";
import { settingsOf } from "../../records/book";
import { AS_OF, contextOf, type ProgramRows } from "../../tables/caseload/program";

const child = (id: string, birth: string, gestation: string | null = null) => [id, birth, gestation, "T1", birth, null];

/** Side-head, name and text of every line. */
function linesOf({ rows }: SheetOut): string[][] {
  return rows.map((row) => row.map((cell) => String((typeof cell === "object" ? cell?.value : cell) ?? "")));
}

/** The lines under a side-head, up to the next. */
function under(sheet: SheetOut, head: string): string {
  const lines = linesOf(sheet);
  const from = lines.findIndex(([first]) => first === head);
  const next = lines.findIndex(([first], at) => at > from && first !== "");
  return lines
    .slice(from, next < 0 ? undefined : next)
    .map((line) => line.slice(1).join(" "))
    .join("\n");
}

const pageFor = (id: string, program: ProgramRows) => pageOf(contextOf(program), { kind: "child", id });
const textOf = (sheet: SheetOut) => linesOf(sheet).flat().join("\n");

describe("the child page, by hand", () => {
  /** Born 12 weeks early (28+0) on 15 August 2025: the due date is 7 November 2025. */
  const early = pageFor("A", {
    children: [child("A", "2025-08-15", "28+0")],
    looks: [
      ["A", "strolls", "2026-08-20", "not met"],
      ["A", "strolls", "2026-09-20", "met"],
      ["A", "cdc2", "2026-05-20", "met"],
      ["A", "cdc2", "2026-09-20", "lost"],
      ["A", "who1", "2026-06-01", "met"],
      ["A", "cdc1", "2026-09-20", "emerging"],
    ],
    signs: [
      ["A", "2026-09-20", "very stiff", "present", null],
      ["A", "2026-09-01", "very floppy", "present", "2026-09-10"],
    ],
  });

  test("says whom it is for, when, and both ages, with a line for the name and not a word of internal", () => {
    expect(textOf(early)).toContain(
      "For the 15-month visit: 1 loss and 1 sign to talk about now, 1 new skill to tell about",
    );
    // 15 August 2025 to 30 September 2026; 7 November 2025 to 30 September 2026.
    expect(textOf(early)).toContain("your child is 13 months old (10 months from the due date).");
    expect(textOf(early)).toMatch(/The 15-month visit is due around .*15.*2026\./);
    expect(textOf(early)).toMatch(/Name: _{20,} +Code: A/);
    expect(JSON.stringify(early)).not.toMatch(/internal/i);
    expect(early.print?.header).toBe("For the family and the child's clinician");
  });

  test("has its own order", () => {
    const heads = linesOf(early).map(([first]) => first);
    const order = ["What is new", "Losses and signs", "Each area now", "Try together", "To ask", "Please note"];
    expect(heads.filter((head) => order.includes(head!))).toEqual(order);
  });

  test("new is first what was not yet there before, then what was there at the first check, since the last visit", () => {
    const sheet = pageFor("A", {
      children: [child("A", "2025-08-15")],
      looks: [
        ["A", "who2", "2026-09-25", "met"],
        ["A", "strolls", "2026-08-20", "not met"],
        ["A", "strolls", "2026-09-20", "met"],
        ["A", "who1", "2026-06-01", "met"],
      ],
    });
    const lines = under(sheet, "What is new");
    expect(lines).toMatch(/^Since .*15.*2026, your child came to do:/);
    expect(lines.indexOf("Strolls")).toBeLessThan(lines.indexOf("Seen at the first check:"));
    expect(lines.indexOf("Seen at the first check:")).toBeLessThan(lines.indexOf("Skill who 2"));
    expect(lines).not.toContain("Skill who 1");
  });

  test("losses and signs come with the plain advice to talk with the child's clinician now", () => {
    const lines = under(early, "Losses and signs");
    expect(lines).toMatch(/⊘ Skill cdc 2: seen before, not seen any more on .*20.*2026\./);
    expect(lines).toMatch(/Sign seen on .*20.*: very stiff; no follow-up noted yet\./);
    expect(lines).toMatch(/Sign seen on .*1.*: very floppy; followed up on .*10.*\./);
    expect(lines).toMatch(/talk with your child's clinician about this now\. Do not wait/);
  });

  test("a loss that one check suggests is worded apart", () => {
    const sheet = pageFor("A", {
      children: [child("A", "2025-08-15")],
      looks: [
        ["A", "cdc2", "2026-05-20", "met"],
        ["A", "cdc2", "2026-09-20", "not met"],
      ],
    });
    expect(under(sheet, "Losses and signs")).toMatch(/Skill cdc 2: seen before, not clearly seen .* one more check/);
    expect(textOf(sheet)).toContain("1 possible loss to talk about now");
    expect(under(sheet, "Losses and signs")).toContain("no list of warning signs");
  });

  test("each area: seen, and looked for but not yet, with what other children do where it is past", () => {
    const rows = linesOf(early).filter(([, name]) => ["Gross motor", "Speech", "Cognitive"].includes(name!));
    const of = (area: string) => rows.find(([, name]) => name === area)!;
    expect(of("Gross motor")[2]).toContain("● Strolls");
    // Emerging on 20 September at 13 months: past the close at 6 months, three quarters do it by then.
    expect(of("Gross motor")[3]).toContain("○ Skill cdc 1 (3 in 4 children or more do by 6 months)");
    // An area is never blank where something was lost.
    expect(of("Speech")[3]).toContain("⊘ Skill cdc 2 (seen before)");
    expect(of("Cognitive").slice(2)).toEqual(["Not checked so far.", ""]);
  });

  test("past is judged at the last check: what closed since is asked for, not called past", () => {
    const sheet = pageFor("A", {
      children: [["A", "2026-02-25", null, "T1", "2026-09-01", null]],
      // At 5 months and 28 days the window of 6 months was open; on the as-of date it is closed.
      looks: [["A", "who1", "2026-08-22", "not met"]],
    });
    expect(textOf(sheet)).not.toMatch(/nearly all children do by/);
    expect(under(sheet, "Not checked since")).toContain("Please ask for a check of: Skill who 1.");
  });

  test("a child nobody checked, and one checked long ago, are said to be so", () => {
    const of = (looks: unknown[][]) =>
      under(
        pageFor("A", { children: [["A", "2025-08-15", null, "T1", "2026-09-01", null]], looks }),
        "Not checked since",
      );
    expect(of([])).toContain("has not checked your child yet");
    expect(of([["A", "who1", "2025-12-01", "met"]])).toMatch(/Nothing was checked since .*1.*2025/);
    expect(of([["A", "who1", "2026-09-20", "met"]])).toBe("");
  });

  test("the day on which age is counted from birth is named where it is near", () => {
    const of = (birth: string) => textOf(pageFor("A", { children: [child("A", birth, "28+0")] }));
    expect(of("2024-12-15")).toMatch(/From .*15.* 2026, age is counted from birth\./);
    expect(of("2024-08-15")).toMatch(/Since .*15.* 2026, age is counted from birth\./);
    expect(of("2025-08-15")).not.toMatch(/age is counted from birth/);
    expect(of("2024-05-15")).not.toMatch(/age is counted from birth/);
  });

  test("general and autism screening are asked about at their ages", () => {
    const asked = (birth: string) => under(pageFor("A", { children: [child("A", birth)] }), "To ask");
    // Nine, eighteen, twenty-four and fifteen months on 20 October 2026.
    expect(asked("2026-01-20")).toContain("At 9 months, a general screening is advised.");
    expect(asked("2025-04-20")).toContain("At 18 months, a general screening and one for autism are advised.");
    expect(asked("2024-10-20")).toContain("At 24 months, a screening for autism is advised.");
    expect(asked("2025-07-20")).not.toMatch(/screening (is|and|for)/);
    // Eighteen months on 10 August: whether it was done is not in the records. On 10 June it is long past.
    expect(asked("2025-02-10")).toContain(
      "At 18 months, a general screening and one for autism are advised. Was it done?",
    );
    expect(asked("2024-12-10")).not.toContain("Was it done?");
  });
});

describe("try together", () => {
  const SKILLS = [
    ["Skill", "Label", "Area", "Opens", "Closes", "Age basis", "Expected share", "Follows", "Try together", "Basis"],
    ["stand", "Stands", "gross motor", 7, 17, null, 0.99, null, "Stand together", "invented"],
    ["walk", "Walks", "gross motor", 8, 18, null, 0.99, "stand", "Walk together", "invented"],
    ["run", "Runs", "gross motor", null, 24, null, 0.75, "walk", "Chase together", "invented"],
    ["tummy", "Lifts head", "gross motor", null, 2, null, 0.75, null, "Lie face to face together", "invented"],
    ["talk", "Talks", "speech", 12, 20, null, 0.99, null, "Talk together", "invented"],
  ];
  const ideas = (birth: string, looks: unknown[][] = [], gestation: string | null = null) =>
    under(pageFor("A", { children: [child("A", birth, gestation)], looks, skills: SKILLS }), "Try together");

  test("never past an unmet step", () => {
    const stands = [["A", "stand", "2026-09-01", "met"]];
    const looked = [...stands, ["A", "walk", "2026-09-01", "not met"]];
    const walks = [...stands, ["A", "walk", "2026-09-01", "met"]];
    const birth = "2025-01-10";
    expect(ideas(birth, [["A", "stand", "2026-09-01", "not met"]])).toMatch(/Stand together(?!.*(Walk|Chase))/s);
    expect(ideas(birth, looked)).toMatch(/Walk together(?!.*Chase)/s);
    expect(ideas(birth, walks)).toContain("Chase together");
  });

  test("past its window, where help is wanted most, comes first; what nobody looked for is not tried past its close", () => {
    const birth = "2024-08-10";
    expect(ideas(birth, [["A", "talk", "2026-09-01", "not met"]])).toMatch(/^.*\n.*Talk together/);
    expect(ideas(birth)).not.toContain("Talk together");
  });

  test("an opening up to two months off, and never an age that is not reached", () => {
    expect(ideas("2025-11-30")).toContain("Talk together");
    expect(ideas("2025-12-01")).not.toContain("Talk together");
    // Where no opening is published, from the routine visit before the close: 18 months for 24.
    const walks = [["A", "walk", "2026-09-01", "met"]];
    expect(ideas("2025-03-30", walks)).toContain("Chase together");
    expect(ideas("2025-04-01", walks)).not.toContain("Chase together");
  });

  test("one idea from each area before the second of any", () => {
    const looks = [
      ["A", "stand", "2026-09-01", "met"],
      ["A", "walk", "2026-09-01", "not met"],
      ["A", "talk", "2026-09-01", "not met"],
      ["A", "tummy", "2026-09-01", "not met"],
    ];
    // All three are past; of gross motor lifting the head closes first.
    expect(ideas("2024-08-10", looks)).toMatch(/Lie face.*Talk together.*Walk together/s);
  });

  test("where a skill may be lost and nothing is left to try, the clinician is asked first", () => {
    const birth = "2023-11-10";
    const nothing = "The program's list has no idea";
    expect(ideas(birth, [["A", "talk", "2026-09-01", "met"]])).toContain(nothing);
    const lost = ideas(birth, [
      ["A", "talk", "2026-05-01", "met"],
      ["A", "talk", "2026-09-01", "lost"],
    ]);
    expect(lost).toContain("Ask your child's clinician what to try now.");
    expect(lost).not.toMatch(/Talk together|no idea/);
  });

  test("before the due date: no floor play, and nothing of months that are negative", () => {
    // Born on 1 August at 28 weeks 0 days, due on 24 October.
    const said = ideas("2026-08-01", [], "28+0");
    expect(said).toContain("not yet at the due date");
    expect(said).not.toContain("Lie face to face");
    expect(ideas("2026-08-01")).toContain("Lie face to face");
  });
});

describe("the caseload page, by hand", () => {
  const sheet = pageOf(
    contextOf({
      children: ["A", "B", "C"].map((id) => [id, "2025-08-15", null, "T1", "2026-09-01", null]),
      looks: [
        ["A", "who8", "2026-09-20", "met"],
        ["B", "cdc2", "2026-05-20", "met"],
        ["B", "cdc2", "2026-09-20", "lost"],
        ["C", "cdc1", "2026-06-01", "not met"],
      ],
    }),
    { kind: "therapist", code: " t1 " },
  );

  test("children in order of urgency with reason and next step, then what to check next", () => {
    const lines = linesOf(sheet);
    expect(lines[0]?.[0]).toBe("Internal. Caseload of T1: 3 children, 2 to talk about with the clinician now");
    const at = (text: string) => lines.findIndex((line) => line.includes(text));
    expect(at("A loss, or a sign without follow-up")).toBeLessThan(at("B"));
    expect(at("B")).toBeLessThan(at("Past the window: talk now"));
    expect(at("Past the window: talk now")).toBeLessThan(at("C"));
    expect(textOf(sheet)).toMatch(/Also in the program: A \(last checked .*2026\)\./);
    expect(lines.slice(at("What to check next"))[1]?.[0]).toBe("B");
    expect(sheet.print?.header).toMatch(/^INTERNAL/);
    expect(sheet.name).toMatch(/internal/);
  });
});

test("a caseload page plans as many visits as are asked for, and says how many more there are", () => {
  const context = contextOf({ children: Array.from({ length: 12 }, (_, n) => child(`C${n + 10}`, "2026-05-01")) });
  const planned = (visits?: number) => {
    const lines = linesOf(pageOf(context, { kind: "therapist", code: "T1" }, visits));
    return lines.slice(lines.findIndex(([first]) => first === "What to check next") + 1);
  };
  expect(planned(2).map(([first]) => first)).toEqual(["C10", "C11"]);
  const all = planned().map(([first]) => String(first));
  const told = all.filter((first) => /^C\d+$/.test(first));
  expect(told.length).toBeGreaterThan(2);
  expect(all.at(-1)).toBe(`${12 - told.length} more visits in this plan: see the re-check plan.`);
});

test.each([
  [{ kind: "child", id: "Z" }, /No child in Children has that id/],
  [{ kind: "child", id: "gone" }, /not in the program on that day/],
  [{ kind: "therapist", code: "T7" }, /No child in the program on that day has that therapist/],
] as const)("%j is refused with a sentence that names nobody", (subject, message) => {
  const context = contextOf({
    children: [child("A", "2025-08-15"), ["gone", "2025-08-15", null, "T1", "2025-09-01", AS_OF]],
  });
  expect(() => pageOf(context, subject)).toThrow(NobodyOfThatName);
  expect(() => pageOf(context, subject)).toThrow(message);
  expect(() => pageOf(context, subject)).not.toThrow(/\bA\b|T1|T7|gone|Z/);
});

/** Words that judge a child (METHOD.md, section 1), name a diagnosis, or belong on a score card. */
const JUDGING = /delay|normal|\bfail|deficit|disorder|autistic|score|\bred\b|amber|\bgreen\b|percentile rank/i;
/** Points of a Letter page between the margins (11 in less 0.6 and 0.7 in), printed no smaller than at four fifths. */
const MOST_POINTS = ((11 - 0.6 - 0.7) * 72) / 0.8;

describe("every page of the sample program", () => {
  let context: TableContext;
  let all: Concerns[];
  beforeAll(() => {
    const settings = settingsOf({ asOf: AS_OF });
    const records = readRecords(asRead(sampleSheets(makeSample({ children: 240, seed: 7 }))), settings);
    context = tableContext(buildCohort(records, settings), settings, records);
    all = concernsOfFollowed(context);
  }, 60_000);

  test("fits one page at a size that can be read, judges nobody, and names no other child", () => {
    for (const concerns of all) {
      const sheet = childPage(context, concerns);
      const text = textOf(sheet);
      expect(heightOf(sheet)).toBeLessThan(MOST_POINTS);
      expect(text).not.toMatch(JUDGING);
      expect(text.match(/AF-\d{4}/g)).toEqual([context.cohort.ids[concerns.child]]);
      expect(text).toMatch(/This page is not a diagnosis/);
      expect(readingGrade(sheet)).toBeLessThanOrEqual(6);
      expect(text).not.toMatch(/undefined|NaN|Infinity|null/);
    }
  });

  test("tries nothing past a step that is not there, nothing that is there, and nothing before the due date", () => {
    const { cohort, attainment } = context;
    let tried = 0;
    for (const concerns of all) {
      const said = under(childPage(context, concerns), "Try together");
      const states = cohort.skills.map((_, skill) => attainment.state[concerns.child * cohort.skills.length + skill]);
      const isThere = (skill: number): boolean =>
        states[skill] === STATE.met || cohort.skills.some(({ follows }, later) => follows === skill && isThere(later));
      cohort.skills.forEach((skill, index) => {
        if (!said.includes(skill.tryTogether)) return;
        tried += 1;
        expect(isThere(index)).toBe(false);
        if (skill.follows !== null) expect(isThere(skill.follows)).toBe(true);
        expect(concerns.ageMonths).toBeGreaterThanOrEqual(0);
        expect(concerns.ageMonths).toBeGreaterThan((skill.opensMonths ?? (skill.closesMonths ?? 0) - 6.1) - 2.1);
      });
    }
    expect(tried).toBeGreaterThan(200);
  });

  test("tells each child of a therapist once, within one page", () => {
    for (const therapist of new Set(all.map((each) => each.therapist))) {
      const caseload = all.filter((each) => each.therapist === therapist);
      const sheet = therapistPage(context, caseload);
      const own = caseload.map(({ child: at }) => context.cohort.ids[at]);
      const text = textOf(sheet);
      const told = text.slice(0, text.indexOf("What to check next")).match(/AF-\d{4}/g) ?? [];
      expect([...told].sort()).toEqual([...own].sort());
      expect(heightOf(sheet)).toBeLessThan(MOST_POINTS);
      expect(text).not.toMatch(JUDGING);
    }
  });
});

/** Flesch-Kincaid grade (Kincaid et al., 1975) of every sentence that a family reads: a line or a cell ends one. */
function readingGrade(sheet: SheetOut): number {
  const cells = linesOf(sheet)
    .flat()
    .filter((text) => text !== "" && !/^(Name: _|Ages are from:)/.test(text));
  const sentences = cells.flatMap((text) => text.split(/[.?!:;\n]+(?:\s|$)/)).filter((each) => /[a-z]/i.test(each));
  const words = sentences.flatMap((each) => each.match(/[A-Za-z][A-Za-z'’-]*/g) ?? []);
  const counts = {
    sentence: sentences.length,
    word: words.length,
    syllable: words.reduce((sum, word) => sum + syllable(word), 0),
  };
  return fleschKincaid(counts);
}

function heightOf({ rows, rowHeights }: SheetOut): number {
  return rows.reduce((sum, _, row) => sum + (rowHeights?.get(row) ?? 15), 0);
}
