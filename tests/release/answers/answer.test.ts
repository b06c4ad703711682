import { dayFromIso, isoOf } from "../../../src/age/day";
import { answerQuestion, triedInWords } from "../../../src/release/answers/answer";
import { attemptsOf } from "../../../src/release/answers/attempts";
import { QUESTION_IDS, QUESTIONS } from "../../../src/release/answers/questions";
import type { PreparedRelease } from "../../../src/release/prepared";
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
  prepare: (_: string, settings: Settings) => stepsFrom(settings),
  contextOf: ({ asOf, from }: PreparedRelease) => ({
    ...{ asOf, from, level: 0.95, skills: [] },
    rule: { minimumCell: 11, method: "hide" as const, base: null },
  }),
  skills: null,
};

test("what is held back for a quarter is shown for the first longer period that shows it, and each attempt is told", () => {
  const answer = answerQuestion("plans-in-time", settingsOf(), tools);
  if ("places" in answer) throw new Error("refused");
  expect(answer.figures.map(({ sentence }) => sentence)).toEqual([
    "Of 36 referrals made between October 1, 2025 and September 30, 2026 that can be judged, 27 had a plan within 45 days.",
  ]);
  expect(isoOf(answer.settings.from!)).toBe("2025-10-01");
  expect(triedInWords(answer.tried, 11)).toEqual([
    "as asked, July 1, 2026 to September 30, 2026: held back at threshold 11.",
    "for the 6 months from April 1, 2026 (--from 2026-04-01): held back at threshold 11.",
    "for the 12 months from October 1, 2025 (--from 2025-10-01): shown.",
  ]);
});

test("a question that shows as it was asked is tried once", () => {
  const answer = answerQuestion("plans-in-time", settingsOf({ from: "2025-10-01" }), tools);
  expect("tried" in answer && answer.tried.length).toBe(1);
});

test("where every attempt is refused, the first refusal is the answer", () => {
  let refusals = 0;
  const refused = { ...tools, prepare: () => ({ places: [], proposals: [`refusal ${(refusals += 1)}`] }) };
  expect(answerQuestion("plans-in-time", settingsOf(), refused)).toEqual({ places: [], proposals: ["refusal 1"] });
});

test("fewer age groups keep the first and the last edge, and grouping is left out last", () => {
  const attempts = attemptsOf("met-by-band", settingsOf({ by: "Site", edges: "0,3,6,12,24,36" }));
  expect(attempts.map(({ options }) => options)).toEqual([
    "",
    "--edges 0,6,24,36",
    "--edges 0,24,36",
    "--edges 0,36",
    "no --by",
    "--edges 0,36 no --by",
  ]);
  expect(attempts.at(-1)!.settings).toMatchObject({ by: [], edges: [0, 36] });
});

test("an attempt is never nearer than the question: a period of two years has no longer one to try", () => {
  expect(attemptsOf("referral-steps", settingsOf({ from: "2024-10-01" })).map(({ options }) => options)).toEqual([""]);
});

test("every question has its table, and no two ask the same", () => {
  expect(new Set(QUESTION_IDS.map((id) => QUESTIONS[id].asks)).size).toBe(QUESTION_IDS.length);
});
