import type { Choice } from "../../../src/records/understanding/choices";
import { type Cell, day, merge, type Program, sheetOf, skillsOf, visits, word } from "./make-sheets";
import { iso, type PlannedCheck, type PlannedChild } from "./plan";

/** A cover, headings over two rows, two grids of own skills, totals, notes in the margin, one child under two ids. */
const grids: Program = {
  name: "two grids of own skills, everyday headings",
  workbook: (plan) => {
    const motor = skillsOf(plan, "gross motor", "fine motor");
    const speech = skillsOf(plan, "speech");
    const second = plan.children[1] as PlannedChild;
    const alias = (id: string) => (id === second.id ? id.replace("-0", "") : id);
    const kids = plan.children.map((each, i): Cell[] => [
      each.id,
      day(each.birth),
      each.weeksEarly === 0 ? null : each.weeksEarly,
      i % 5 === 0 && each.site === "Mill Street"
        ? "Mill St"
        : each.site === "Eastside" && i % 3 === 0
          ? "eastside"
          : each.site,
      each.therapist,
      day(each.enrolled),
      day(each.left),
      i === 2 ? "call mother before the visit, moved twice this year" : null,
    ]);
    const words = word({ met: "Y", emerging: "E", "not met": "N" });
    const ticks = word({ met: "✓", emerging: "E", "not met": "N" });
    return {
      dateSystem: 1900,
      sheets: [
        sheetOf("Cover", [["Bright Steps"], ["Quarterly figures"], [null, "kept by the front office"]]),
        sheetOf("Kids", [
          ["Our children"],
          [],
          ["Kid #", "DOB", "Weeks early", "Clinic", "Staff", "Intake", "Exit", "Remarks"],
          ...kids,
          [`Total children ${kids.length}`, null, null, null, null, kids.length],
        ]),
        sheetOf(
          "Motor",
          [
            ["", "", "Gross motor", "", "", "Fine motor", ""],
            ["Kid #", "Visit", ...motor],
            ...visits(plan, motor, words, alias),
          ],
          [merge(0, 2, 4), merge(0, 5, 6)],
        ),
        sheetOf("Talking", [
          ["Kid #", "Visit", ...speech, null, "ask Ruth about the March dates"],
          ...visits(plan, speech, ticks),
        ]),
        sheetOf("Refs", [
          ["Kid #", "Referral date", "Concern area", "Who referred", "Date evaluated"],
          [plan.children[0]?.id ?? "", day((plan.children[0]?.enrolled ?? 0) + 20), "speech", "Clinic", null],
        ]),
      ],
    };
  },
  acts: (found) => [
    { kind: "word", word: "E", means: "emerging" },
    { kind: "decision", decision: { kind: "same-child", child: "K-002", alias: "K02" } },
    ...found.skills
      .filter(({ area }) => area === "")
      .slice(0, 1)
      .map((): Choice => ({ kind: "area of all", of: "", area: "speech" })),
  ],
};

/** Long lists, with results as letters that a key on another sheet explains. */
const longLists: Program = {
  name: "long lists with a key",
  workbook: (plan) => {
    const words = word({ met: "A", emerging: "P", "not met": "NY" });
    return {
      dateSystem: 1900,
      sheets: [
        sheetOf("Key", [["A = achieved, P = partly, NY = not yet"]]),
        sheetOf("Enrollment", [
          ["Client ID", "Date of birth", "EDC", "Location", "Provider", "Start date", "Discharge date", "Insurance no"],
          ...plan.children.map((each, i): Cell[] => [
            each.id,
            day(each.birth),
            day(each.birth + each.weeksEarly * 7),
            each.site,
            each.therapist,
            day(each.enrolled),
            day(each.left),
            `9${1000 + i}77`,
          ]),
        ]),
        sheetOf("Skill checks", [
          ["Client ID", "Milestone", "Date checked", "Status", "Remark"],
          ...plan.checks.map((each): Cell[] => [each.child, each.skill, day(each.day), words(each), null]),
        ]),
        sheetOf("Milestones", [
          ["Milestone", "Domain", "Opens", "Closes"],
          ...plan.skills.map(({ id, area }): Cell[] => [id, area, null, null]),
        ]),
      ],
    };
  },
  acts: () => [],
};

/** Two years on two sheets each: children who stayed are listed in both, and who left since has the day only in the later. */
const twoYears: Program = {
  name: "two years on two sheets",
  workbook: (plan) => {
    const cut = plan.children.map(({ enrolled }) => enrolled).sort((a, b) => a - b)[
      Math.floor(plan.children.length / 2)
    ] as number;
    const head = ["Child", "Birth date", "Gestation", "Site", "Therapist", "Enrolled", "Left"];
    const row = (each: PlannedChild, left: number | null): Cell[] => [
      each.id,
      day(each.birth),
      `${40 - each.weeksEarly}+0`,
      each.site,
      each.therapist,
      day(each.enrolled),
      day(left),
    ];
    const first = plan.children.filter(({ enrolled }) => enrolled <= cut);
    const middle = plan.checks.map((each) => each.day).sort((a, b) => a - b)[
      Math.floor(plan.checks.length / 2)
    ] as number;
    const checks = (own: readonly PlannedCheck[]): Cell[][] =>
      own.map((each) => [each.child, each.skill, day(each.day), each.result]);
    return {
      dateSystem: 1900,
      sheets: [
        sheetOf("Children 2025", [head, ...first.map((each) => row(each, null))]),
        sheetOf("Children 2026", [head, ...plan.children.map((each) => row(each, each.left))]),
        sheetOf("Checks 2025", [
          ["Child", "Skill", "Date", "Result"],
          ...checks(plan.checks.filter((each) => each.day < middle)),
        ]),
        sheetOf("Checks 2026", [
          ["Child", "Skill", "Date", "Result"],
          ...checks(plan.checks.filter((each) => each.day >= middle)),
        ]),
        sheetOf("Skills", [
          ["Skill", "Area", "Opens", "Closes"],
          ...plan.skills.map(({ id, area }): Cell[] => [id, area, null, null]),
        ]),
      ],
    };
  },
  acts: () => [],
};

/** One sheet for each therapist, a row per child, the day on which each skill was first seen. */
const perTherapist: Program = {
  name: "one sheet per therapist, with dates in the cells",
  // Only days on which a skill was met are kept: nothing says "not yet".
  keeps: (plan) => ({ ...plan, checks: plan.checks.filter(({ result }) => result === "met") }),
  workbook: (plan) => {
    const names = [...new Set(plan.children.map(({ therapist }) => therapist))];
    const firstMet = (child: string, skill: string) =>
      plan.checks
        .filter((each) => each.child === child && each.skill === skill && each.result === "met")
        .map((each) => each.day)
        .sort((a, b) => a - b)[0] ?? null;
    return {
      dateSystem: 1900,
      sheets: names.map((name) => {
        const own = plan.children.filter(({ therapist }) => therapist === name);
        return sheetOf(name, [
          [`Caseload of ${name}`],
          [
            "Child code",
            "DOB",
            "Weeks premature",
            "Center",
            "Enrolled",
            "Discharge",
            ...plan.skills.map(({ id }) => id),
          ],
          ...own.map((each): Cell[] => [
            each.id,
            day(each.birth),
            each.weeksEarly || null,
            each.site,
            day(each.enrolled),
            day(each.left),
            ...plan.skills.map(({ id }) => day(firstMet(each.id, id))),
          ]),
          ["Total", null, null, null, own.length],
        ]);
      }),
    };
  },
  acts: (found) => (found.sheets.some(({ is }) => is === "grid") ? [] : []),
};

/** Everything on one sheet: a row per check, the child's own columns again in each. */
const oneSheet: Program = {
  name: "all on one sheet",
  workbook: (plan) => {
    const child = new Map(plan.children.map((each) => [each.id, each]));
    const words = word({ met: "Yes", emerging: "Sometimes", "not met": "No" });
    const areaOf = new Map(plan.skills.map(({ id, area }) => [id, area]));
    const rows = plan.checks.map((each): Cell[] => {
      const own = child.get(each.child) as PlannedChild;
      return [
        each.child,
        day(own.birth),
        own.weeksEarly || null,
        own.site,
        own.therapist,
        day(own.enrolled),
        day(own.left),
        areaOf.get(each.skill) ?? "",
        each.skill,
        day(each.day),
        words(each),
      ];
    });
    return {
      dateSystem: 1900,
      sheets: [
        sheetOf("Data", [
          ["Child", "DOB", "Weeks early", "Site", "Therapist", "Enrolled", "Left", "Area", "Skill", "Date", "Result"],
          ...rows,
        ]),
      ],
    };
  },
  acts: () => [],
};

/** Spanish headings and words. */
const spanish: Program = {
  name: "Spanish headings",
  workbook: (plan) => {
    const words = word({ met: "logrado", emerging: "en proceso", "not met": "todavía no" });
    return {
      dateSystem: 1900,
      sheets: [
        sheetOf("Niños", [
          [
            "Código del niño",
            "Fecha de nacimiento",
            "Semanas de gestación",
            "Sede",
            "Terapeuta",
            "Fecha de ingreso",
            "Fecha de salida",
          ],
          ...plan.children.map((each): Cell[] => [
            each.id,
            day(each.birth),
            40 - each.weeksEarly,
            each.site,
            each.therapist,
            day(each.enrolled),
            day(each.left),
          ]),
        ]),
        sheetOf("Observaciones", [
          ["Código del niño", "Habilidad", "Fecha", "Resultado"],
          ...plan.checks.map((each): Cell[] => [each.child, each.skill, iso(each.day), words(each)]),
        ]),
        sheetOf("Habilidades", [
          ["Habilidad", "Área", "Desde", "Hasta"],
          ...plan.skills.map(({ id, area }): Cell[] => [id, area, null, null]),
        ]),
      ],
    };
  },
  acts: () => [],
};

export const PROGRAMS: readonly Program[] = [grids, longLists, twoYears, perTherapist, oneSheet, spanish];
