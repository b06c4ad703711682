import { type Cell, day, type Program, sheetOf, visits } from "./make-sheets";
import { iso, type Plan, type PlannedCheck } from "./plan";

/** `9/3/2026`, as typed by hand. */
function typed(value: number | null): string | null {
  if (value === null) return null;
  const [year, month, date] = iso(value).split("-").map(Number) as [number, number, number];
  return `${month}/${date}/${year}`;
}

/** Scores 0, 1, 2 that a line on the first sheet explains; names beside chart numbers; the headings again on every page. */
const scores: Program = {
  name: "scores with a legend, chart numbers, headings again on every page",
  workbook: (plan) => {
    const chart = (id: string) => 1000 + Number(id.slice(2));
    const score = (check: PlannedCheck | undefined): Cell =>
      check ? { "not met": 0, emerging: 1, met: 2 }[check.result] : null;
    const head = ["Name", "Chart #", "D.O.B.", "EGA (wks)", "Clinic", "Tx", "Date of 1st visit", "D/C date", "Notes"];
    const kids = plan.children.map((each, i): Cell[] => [
      `Child, ${"ABCDEFGHIJ".charAt(i % 10)}. ${i}`,
      chart(each.id),
      day(each.birth),
      40 - each.weeksEarly,
      each.site,
      each.therapist,
      typed(each.enrolled),
      typed(each.left),
      i % 7 === 0 ? "prefers mornings" : null,
    ]);
    return {
      dateSystem: 1900,
      sheets: [
        sheetOf("Start here", [["Tracking file"], ["Scoring: 0 = not yet, 1 = with help, 2 = does it on own"]]),
        sheetOf("Roster", [["CURRENT AND CLOSED"], [], head, ...kids.slice(0, 15), head, ...kids.slice(15)]),
        ...["gross motor", "fine motor", "speech"].map((area) => scoreSheet(plan, area, chart, score)),
      ],
    };
  },
  acts: (found) =>
    ["Gross motor", "Fine motor", "Speech"].flatMap((sheet) =>
      found.sheets
        .filter((each) => each.sheet === sheet)
        .flatMap(({ headings }) => headings.flatMap(({ skill }) => skill ?? []))
        .map((skill) => ({ kind: "area" as const, skill, area: sheet.toLowerCase() })),
    ),
};

function scoreSheet(
  plan: Plan,
  area: string,
  chart: (id: string) => number,
  score: (check: PlannedCheck | undefined) => Cell,
) {
  const own = plan.skills.filter((each) => each.area === area).map(({ id }) => id);
  const by = new Map(plan.children.map((each) => [String(chart(each.id)), each.therapist]));
  const head = ["Chart #", "Seen on", "By", ...own];
  const rows = visits(plan, own, score, (id) => String(chart(id))).map(([id, at, ...cells]): Cell[] => [
    Number(id),
    at as Cell,
    by.get(String(id)) ?? null,
    ...cells,
  ]);
  const paged = rows.flatMap((row, i) => (i > 0 && i % 40 === 0 ? [head, row] : [row]));
  return sheetOf(area.charAt(0).toUpperCase() + area.slice(1), [[`${area.toUpperCase()} CHECKLIST`], head, ...paged]);
}

export const MORE_PROGRAMS: readonly Program[] = [scores];
