import { dayFromIso, isoOf } from "../../../src/age/day";
import { type Answer, answerQuestions, triedInWords } from "../../../src/release/answers/answer";
import { attemptsOf } from "../../../src/release/answers/attempts";
import { QUESTION_IDS, type QuestionId, QUESTIONS } from "../../../src/release/answers/questions";
import type { PreparedRelease, Refusal } from "../../../src/release/prepared";
import { HIDDEN, type ReleasedTable, type ReleasedValue } from "../../../src/release/release-table";
import { parseSettings, type Settings } from "../../../src/settings/settings";

const settingsOf = (entries: object = {}): Settings => {
  const parsed = parseSettings({ asOf: "2026-09-30", ...entries }, 1900);
  if ("messages" in parsed) throw new Error(parsed.messages.join(" "));
  return parsed.settings;
};

/** Steps of referrals whose plans show once the period is a year long: a release as it leaves, without the way to it. */
function stepsFrom(settings: Settings): PreparedRelease {
  const isShown = settings.from! <= dayFromIso("2025-10-01")!;
  const row: ReleasedValue[] = ["plan", 40, 31, isShown ? 36 : HIDDEN, isShown ? 27 : HIDDEN];
  const columns = ["step", "of", "count", "of45", "within45"].map((key) => ({
    key,
    label: key,
    unit: "text" as const,
  }));
  const table: ReleasedTable = { id: "referral-steps", title: "", population: "", columns, rows: [row], notes: [] };
  return { asOf: "2026-09-30", from: isoOf(settings.from!), tables: [table] } as unknown as PreparedRelease;
}

const tools = {
  prepare: (_: readonly string[], settings: Settings): PreparedRelease | Refusal => stepsFrom(settings),
  contextOf: ({ asOf, from }: PreparedRelease) => ({
    ...{ asOf, from, level: 0.95, skills: [] },
    rule: { minimumCell: 11, method: "hide" as const, base: null },
  }),
};

function answerOf(ids: readonly QuestionId[], settings: Settings, own = tools): Answer {
  const answer = answerQuestions(asked(ids), settings, own);
  if ("places" in answer) throw new Error("refused");
  return answer;
}

const asked = (ids: readonly QuestionId[]) => QUESTIONS.filter(({ id }) => ids.includes(id));

test("what is held back for a quarter is shown for the first longer period that shows it, and each attempt is told", () => {
  const answer = answerOf(["plans-in-time"], settingsOf());
  expect(answer.answered[0]!.figures.map(({ sentence }) => sentence)).toEqual([
    "Of 36 referrals made between October 1, 2025 and September 30, 2026 that can be judged, 27 had a plan within 45 days.",
  ]);
  expect(isoOf(answer.best.settings.from!)).toBe("2025-10-01");
  expect(answer.tried.map((each) => triedInWords(each, 11, true))).toEqual([
    "as asked, July 1, 2026 to September 30, 2026: held back at threshold 11.",
    "for the 6 months from April 1, 2026 (--from 2026-04-01): held back at threshold 11.",
    "for the 12 months from October 1, 2025 (--from 2025-10-01): shown.",
  ]);
});

test("a question that shows as it was asked is tried once", () => {
  expect(answerOf(["plans-in-time"], settingsOf({ from: "2025-10-01" })).tried).toHaveLength(1);
});

test("where every attempt is refused, the first refusal is the answer", () => {
  let refusals = 0;
  const refused = { ...tools, prepare: () => ({ places: [], proposals: [`refusal ${(refusals += 1)}`] }) };
  expect(answerQuestions(asked(["plans-in-time"]), settingsOf(), refused)).toEqual({
    places: [],
    proposals: ["refusal 1"],
  });
});

const optionsOf = (table: "met-by-band" | "referral-steps", entries: object) => {
  const { singles, widest } = attemptsOf([table], settingsOf(entries));
  return [...singles.map(({ options }) => options), ...(widest === null ? [] : [widest.options])];
};

test("fewer age groups keep the first and the last edge, grouping is left out last, the finest first", () => {
  expect(optionsOf("met-by-band", { by: ["Site", "Therapist"], edges: "0,3,6,12,24,36" })).toEqual([
    "",
    "--edges 0,6,24,36",
    "--edges 0,24,36",
    "--edges 0,36",
    "--by Site",
    "no --by",
    "--edges 0,36 no --by",
  ]);
});

test("an attempt is never nearer than the question: a period of two years has no longer one to try", () => {
  expect(optionsOf("referral-steps", { from: "2024-10-01" })).toEqual([""]);
});

test("several questions are answered by one release: what improves each is put together and tried", () => {
  const prepare = (_: readonly string[], settings: Settings) => {
    const steps = stepsFrom(settings).tables[0]!;
    const isShown = settings.edges.length <= 3;
    const columns = ["skill", "area", "band", "children", "assessed"].map((key) => ({
      key,
      label: key,
      unit: "text" as const,
    }));
    const row: ReleasedValue[] = ["walk-alone", "gross motor", "0 to <12 months", isShown ? 40 : HIDDEN, 30];
    const bands: ReleasedTable = { id: "met-by-band", title: "", population: "", columns, rows: [row], notes: [] };
    return { ...stepsFrom(settings), tables: [bands, steps] } as PreparedRelease;
  };
  const answer = answerOf(["children", "plans-in-time"], settingsOf({ edges: "0,6,12,36" }), { ...tools, prepare });
  expect(answer.best.options).toBe("--edges 0,12,36 --from 2025-10-01");
  expect(triedInWords(answer.tried[0]!, 11)).toBe(
    "as asked, July 1, 2026 to September 30, 2026: children in the program – held back at threshold 11; plans within 45 days – held back at threshold 11.",
  );
  expect(answer.answered.map(({ figures }) => figures[0]!.sentence)).toEqual([
    "40 children were in the program on September 30, 2026.",
    expect.stringContaining("27 had a plan within 45 days"),
  ]);
});

test("most figures stand, not the largest share of fewer: 3 of 4 are more than 2 of 2", () => {
  const columns = ["skill", "area", "band", "assessed", "met"].map((key) => ({
    key,
    label: key,
    unit: "text" as const,
  }));
  const rowsOf = (held: number, of: number): ReleasedValue[][] =>
    Array.from({ length: of }, (_, at) => ["all", "speech", `band ${at}`, 40, at < held ? HIDDEN : 30]);
  const prepare = (_: readonly string[], settings: Settings) => {
    const rows = settings.edges.length > 3 ? rowsOf(1, 4) : rowsOf(0, 2);
    const table: ReleasedTable = { id: "met-by-band", title: "", population: "", columns, rows, notes: [] };
    return { ...stepsFrom(settings), tables: [table] } as PreparedRelease;
  };
  const answer = answerOf(["skills-met"], settingsOf({ edges: "0,6,12,24,36" }), { ...tools, prepare });
  expect(answer.tried.length).toBeGreaterThan(1);
  expect(answer.best.options).toBe("");
  expect(answer.answered[0]!.figures).toHaveLength(4);
});

test("every question has its table, and no two ask the same", () => {
  expect(new Set(QUESTIONS.map(({ asks }) => asks)).size).toBe(QUESTION_IDS.length);
});
