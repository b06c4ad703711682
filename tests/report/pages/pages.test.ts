import { makeSample } from "../../../src/sample/make-sample";
import { sampleSheets } from "../../../src/sample/sample-sheets";
import { buildCohort } from "../../../src/cohort/cohort";
import { readRecords } from "../../../src/records/read-records";
import { childPage } from "../../../src/report/pages/child-page";
import { NobodyOfThatName, pageOf } from "../../../src/report/pages/make-page";
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
  /** Born 12 weeks early (28+0) on August 15, 2025: the due date is November 7, 2025. */
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

  test("says whom it is for, when, and both ages", () => {
    expect(textOf(early)).toContain("For the 15-month visit of A: 1 loss to talk about now");
    // August 15, 2025 to September 30, 2026; November 7, 2025 to September 30, 2026.
    expect(textOf(early)).toContain(
      "13 months 15 days old (corrected 10 months 23 days; corrected ages count from the due date)",
    );
    expect(textOf(early)).toContain("The age of 15 months comes on November 15, 2026.");
  });

  test("stands in its own order", () => {
    const heads = linesOf(early).map(([first]) => first);
    const order = ["What is new", "Losses and signs", "Where each area stands", "To try together", "To ask"];
    expect(heads.filter((head) => head !== "").slice(2)).toEqual([...order, "Please keep in mind"]);
  });

  test("new is what was first seen after the last routine visit, with the look before", () => {
    const lines = under(early, "What is new");
    expect(lines).toContain("Since the 12-month visit was due (August 15, 2026)");
    expect(lines).toContain(
      "● Strolls: first seen on September 20, 2026 (13 months 5 days old, corrected 10 months 13 days), not yet on August 20, 2026.",
    );
    expect(lines).not.toContain("Skill who 1");
    expect(lines).not.toContain("Skill cdc 2");
  });

  test("losses and signs come with the plain advice to talk with the child's clinician now", () => {
    const lines = under(early, "Losses and signs");
    expect(lines).toContain("⊘ Skill cdc 2: lost; seen by May 20, 2026, recorded as lost on September 20, 2026.");
    expect(lines).toContain("Sign seen on September 20, 2026: very stiff; no follow-up noted yet.");
    expect(lines).toContain("Sign seen on September 1, 2026: very floppy; followed up on September 10, 2026.");
    expect(lines).toMatch(/talk with your child's clinician about this now, without waiting/);
  });

  test("a loss that one look suggests is worded apart", () => {
    const sheet = pageFor("A", {
      children: [child("A", "2025-08-15")],
      looks: [
        ["A", "cdc2", "2026-05-20", "met"],
        ["A", "cdc2", "2026-09-20", "not met"],
      ],
    });
    expect(under(sheet, "Losses and signs")).toContain("Skill cdc 2: lost, to confirm; seen by May 20, 2026");
    expect(textOf(sheet)).toContain("1 loss to confirm and to talk about now");
    expect(under(sheet, "Losses and signs")).toContain("no list of warning signs");
  });

  test("each area says what is seen, by the latest window, and what was looked for, and how usual past a window is", () => {
    expect(under(early, "Where each area stands")).toMatch(/Gross motor Seen: ● Strolls.*○ Skill cdc 1/);
    expect(under(early, "Where each area stands")).toContain("window 1.0 to 6.0 months for 75 in 100, past)");
    // August 15, 2025 and November 7, 2025 (the due date) to September 20, 2026, in completed months.
    expect(under(early, "Where each area stands")).toContain(
      "Skill cdc 1 (September 20, 2026, at 13 months, corrected 10; window",
    );
    expect(under(early, "Please keep in mind")).toContain("up to 1 child in 4 is past it");
    expect(under(early, "Where each area stands")).toContain("Cognitive Not looked at by the program so far.");
  });

  test("ideas are the program's own words, for open windows only", () => {
    const about = (looks: unknown[][]) =>
      under(pageFor("A", { children: [child("A", "2025-08-15")], looks }), "To try together");
    expect(about([])).toContain("Strolls: Stroll together");
    expect(about([])).not.toContain("Pour water together");
    expect(about([["A", "strolls", "2026-09-01", "met"]])).not.toContain("Stroll together");
  });

  test("the visits with general screening say so, and ask about it", () => {
    // Nine months on October 20, 2026.
    const sheet = pageFor("A", { children: [child("A", "2026-01-20")] });
    expect(textOf(sheet)).toContain("an age at which general screening is recommended");
    expect(under(sheet, "To ask")).toContain("General screening is recommended at this age");
    // Twelve months on October 20, 2026.
    expect(textOf(pageFor("A", { children: [child("A", "2025-10-20")] }))).not.toMatch(/screening/);
  });
});

describe("the caseload page, by hand", () => {
  const sheet = pageOf(
    contextOf({
      children: [child("A", "2025-08-15"), child("B", "2025-08-15"), child("C", "2025-08-15")],
      looks: [
        ["B", "cdc2", "2026-05-20", "met"],
        ["B", "cdc2", "2026-09-20", "lost"],
        ["C", "cdc1", "2026-02-01", "not met"],
      ],
    }),
    { kind: "therapist", code: " t1 " },
  );

  test("children in order of urgency with reason and next step, then what to look at next", () => {
    const lines = linesOf(sheet);
    expect(lines[0]?.[0]).toBe("Internal. Caseload of T1: 3 children, 1 comes first");
    const at = (text: string) => lines.findIndex((line) => line.includes(text));
    expect(at("A loss, or a sign without follow-up")).toBeLessThan(at("B"));
    expect(at("B")).toBeLessThan(at("To be looked at again"));
    expect(at("To be looked at again")).toBeLessThan(at("C"));
    expect(textOf(sheet)).toContain("Also followed: A.");
    expect(lines.slice(at("What to look at next"))[1]?.[0]).toBe("B");
    expect(sheet.print?.header).toMatch(/^INTERNAL/);
    expect(sheet.name).toMatch(/internal/);
  });
});

test("a caseload page plans as many visits as are asked for, and says how many more there are", () => {
  const context = contextOf({ children: Array.from({ length: 12 }, (_, n) => child(`C${n + 10}`, "2026-05-01")) });
  const planned = (visits?: number) => {
    const lines = linesOf(pageOf(context, { kind: "therapist", code: "T1" }, visits));
    return lines.slice(lines.findIndex(([first]) => first === "What to look at next") + 1);
  };
  expect(planned(2).map(([first]) => first)).toEqual(["C10", "C11"]);
  expect(
    planned()
      .map(([first]) => first)
      .at(-1),
  ).toBe("6 more visits in this plan: see the re-check plan.");
});

test.each([
  [{ kind: "child", id: "Z" }, /No child in Children has that id/],
  [{ kind: "child", id: "gone" }, /not followed on the as-of date/],
  [{ kind: "therapist", code: "T7" }, /No child followed on the as-of date has that therapist/],
] as const)("%j is refused with a sentence that names nobody", (subject, message) => {
  const context = contextOf({
    children: [child("A", "2025-08-15"), ["gone", "2025-08-15", null, "T1", "2025-09-01", AS_OF]],
  });
  expect(() => pageOf(context, subject)).toThrow(NobodyOfThatName);
  expect(() => pageOf(context, subject)).toThrow(message);
  expect(() => pageOf(context, subject)).not.toThrow(/\bA\b|T1|T7|gone|Z/);
});

/** Words that judge a child (METHOD.md, section 1), name a diagnosis, or belong on a score card. */
const JUDGING = /delay|normal|\bfail|deficit|disorder|autis|score|\bred\b|amber|\bgreen\b|percentile rank/i;
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
      expect(text).toMatch(/Nothing here is a diagnosis/);
      expect(text).not.toMatch(/undefined|NaN|Infinity|null/);
    }
  });

  test("tells each child of a therapist once, within one page", () => {
    for (const therapist of new Set(all.map((each) => each.therapist))) {
      const caseload = all.filter((each) => each.therapist === therapist);
      const sheet = therapistPage(context, caseload);
      const own = caseload.map(({ child: at }) => context.cohort.ids[at]);
      const text = textOf(sheet);
      const told = text.slice(0, text.indexOf("What to look at next")).match(/AF-\d{4}/g) ?? [];
      expect([...told].sort()).toEqual([...own].sort());
      expect(heightOf(sheet)).toBeLessThan(MOST_POINTS);
      expect(text).not.toMatch(JUDGING);
    }
  });
});

function heightOf({ rows, rowHeights }: SheetOut): number {
  return rows.reduce((sum, _, row) => sum + (rowHeights?.get(row) ?? 15), 0);
}
