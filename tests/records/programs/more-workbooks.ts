import { dayFromIso } from "../../../src/age/day";
import { type Cell, day, merge, type Program, sheetOf, visits } from "./make-sheets";
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

/** Two columns for each skill, the day of the last check and its result, below one heading that spans both. */
const pairs: Program = {
  name: "a day and a result for each skill, first and last names",
  keeps: (plan) => ({ ...plan, checks: lastOfEach(plan.checks) }),
  workbook: (plan) => {
    const words = { met: "Achieved", emerging: "Emerging", "not met": "Not yet" } as const;
    const kids = plan.children.map((each, i): Cell[] => [
      `F${i % 9}`,
      `L${i % 11}`,
      each.id,
      day(each.birth),
      `${40 - each.weeksEarly} wks`,
      each.site,
      each.therapist,
      day(each.enrolled - 20),
      day(each.enrolled),
      day(each.left),
    ]);
    const rows = plan.children.map((each): Cell[] => [
      each.id,
      ...plan.skills.flatMap(({ id }): Cell[] => {
        const check = plan.checks.find(({ child, skill }) => child === each.id && skill === id);
        return check ? [day(check.day), words[check.result]] : [null, null];
      }),
    ]);
    const top = ["Case No.", ...plan.skills.flatMap(({ id }) => [id, null])];
    const merged = [
      { top: 0, bottom: 1, left: 0, right: 0 },
      ...plan.skills.map((_, i) => merge(0, 1 + 2 * i, 2 + 2 * i)),
    ];
    return {
      dateSystem: 1900,
      sheets: [
        sheetOf("Served", [
          [
            "First name",
            "Last name",
            "Case No.",
            "Birthdate",
            "Wks gest.",
            "Campus",
            "Lead",
            "Referral",
            "Opened",
            "Closed",
          ],
          ...kids,
        ]),
        sheetOf("Milestones", [top, [null, ...plan.skills.flatMap(() => ["Last checked", "Status"])], ...rows], merged),
      ],
    };
  },
  acts: () => [{ kind: "area of all", of: "", area: "gross motor" }],
};

function lastOfEach(checks: readonly PlannedCheck[]): PlannedCheck[] {
  const last = new Map<string, PlannedCheck>();
  for (const each of checks) {
    const key = `${each.child}|${each.skill}`;
    if ((last.get(key)?.day ?? -Infinity) < each.day) last.set(key, each);
  }
  return [...last.values()];
}

const QUARTERS = ["2025-12-31", "2026-03-20", "2026-06-19", "2026-09-18"];

/** One sheet per quarter without a column of days: the title says when the checks were made. */
const quarters: Program = {
  name: "one sheet per quarter, the day in the title",
  keeps: (plan) => ({ ...plan, checks: QUARTERS.flatMap((each) => checkedOn(plan, dayFromIso(each) as number)) }),
  workbook: (plan) => {
    const words = { met: "Y", emerging: "E", "not met": "N" } as const;
    const ids = plan.skills.map(({ id }) => id);
    return {
      dateSystem: 1900,
      sheets: [
        sheetOf("Master list", [
          ["Child", "DOB", "Due date", "Location", "Staff", "Start", "End"],
          ...plan.children.map((each): Cell[] => [
            each.id,
            day(each.birth),
            day(each.birth + each.weeksEarly * 7),
            each.site,
            each.therapist,
            day(each.enrolled),
            day(each.left),
          ]),
        ]),
        ...QUARTERS.map((each) => {
          const at = dayFromIso(each) as number;
          const own = plan.checks.filter((check) => check.day === at);
          const children = [...new Set(own.map(({ child }) => child))];
          return sheetOf(`Q ${each.slice(0, 7)}`, [
            [`Quarterly check, done ${typed(at) ?? ""}`],
            ["Child", ...ids],
            ...children.map((child): Cell[] => [
              child,
              ...ids.map((id) => {
                const check = own.find((one) => one.child === child && one.skill === id);
                return check ? words[check.result] : null;
              }),
            ]),
          ]);
        }),
      ],
    };
  },
  acts: () => [
    { kind: "word", word: "E", means: "emerging" },
    { kind: "area of all", of: "", area: "speech" },
  ],
};

/** What a plan's own checks had shown by a day, as if all were looked at that day. */
function checkedOn(plan: Plan, at: number): PlannedCheck[] {
  const here = plan.children.filter(({ enrolled, left }) => enrolled <= at && (left === null || at < left));
  const known = lastOfEach(plan.checks.filter((each) => each.day <= at));
  return known.filter(({ child }) => here.some(({ id }) => id === child)).map((each) => ({ ...each, day: at }));
}

export const MORE_PROGRAMS: readonly Program[] = [scores, pairs, quarters];
