import type { Skill } from "../../../src/records/records";
import type { Report } from "../../../src/report/report";
import { echoSettings, usualSettings } from "../../../src/settings/settings";
import type { Table, TableColumn, TableUnit, TableValue } from "../../../src/tables/table";

/** A small invented report, made by hand: no figure in it comes from the program. */
export function smallReport(changes: Partial<Report> = {}): Report {
  const settings = {
    ...echoSettings(usualSettings),
    asOf: "2026-09-30",
    from: "2026-07-01",
    correctBelow: "37+0",
    correctUntil: 24,
    edges: [0, 3, 6, 9, 12, 18, 24, 36],
    recheck: 90,
    level: 0.95,
    by: [],
    seed: 20240229,
  };
  return {
    tool: { name: "Windowline", version: "0.1.0" },
    settings,
    input: [
      { table: "Children", sheet: "Children", address: "A1:H13", rows: 12, used: 12, leftOut: {} },
      {
        table: "Observations",
        sheet: "Visits",
        address: "A1:E1201",
        rows: 1200,
        used: 1188,
        leftOut: { "exact copy": 8, "after the as-of date": 4 },
      },
    ],
    findings: [
      finding("date-after-as-of", "error", "C12"),
      finding("date-after-as-of", "error", "C90"),
      finding("outside-enrolment", "warning", "C7"),
      finding("table-absent", "note", "A1"),
    ],
    tables: [metByBandTable(), ageWhenMetTable(), agreementTable()],
    provenance: {
      fingerprint: "0".repeat(64),
      records: [],
      sites: [],
      corrections: null,
      settings,
      version: "0.1.0",
      seed: 20240229,
    },
    print: {
      skills: SKILLS,
      curves: [
        {
          skill: "GM1",
          group: [],
          steps: [
            { fromMonths: 9, toMonths: 11, shareTo: 0.25 },
            { fromMonths: 12, toMonths: 13, shareTo: 0.75 },
            { fromMonths: 15, toMonths: 16, shareTo: 0.9 },
          ],
        },
        { skill: "SP1", group: [], steps: [{ fromMonths: 10, toMonths: 14, shareTo: 0.5 }] },
      ],
      scannedMonths: [],
      trend: null,
      followed: 12,
      bridges: [],
      skipped: [],
      everFollowed: 20,
      decisions: ["Two ids are one child: the rows of both count as one (decided on sheet Decisions, row 2)."],
      counted: ["Gestation is not recorded for 2 children, who count as born at term."],
    },
    ...changes,
  };
}

export const SKILLS: readonly Skill[] = [
  skill("GM1", "Walks some steps alone", "gross motor", 8.2, 17.6, 0.99, "WHO 2006, 1st to 99th percentile"),
  skill("SP1", "Says one word with meaning", "speech", null, 15, 0.75, "CDC/AAP 2022"),
  skill("SP2", "Claps along", "speech", 6, 9, null, "common practice, no source"),
];

function skill(
  id: string,
  label: string,
  area: string,
  opensMonths: number | null,
  closesMonths: number,
  expectedShare: number | null,
  basis: string,
): Skill {
  const rest = { ageBasis: "corrected", follows: null, tryTogether: "", sense: null } as const;
  return { id, label, area, opensMonths, closesMonths, expectedShare, basis, ...rest };
}

/** Twelve children: 8 of 10 assessed have met GM1; SP1 6 of 9; SP2 9 of 12, one lost. */
export function metByBandTable(): Table {
  const band = "12 to <18 months";
  return {
    id: "met-by-band",
    title: "Children who have met each skill, by age group",
    population: "Children in the program on the as-of date",
    columns: columns([
      ["skill", "Skill", "text"],
      ["area", "Area", "text"],
      ["band", "Age group", "text"],
      ["children", "Children", "children"],
      ["hadAtFirstLook", "Already met at first check", "children"],
      ["gained", "Met since", "children"],
      ["notMet", "Not met", "children"],
      ["outOfDate", "Needs a recheck", "children"],
      ["lost", "Lost", "children"],
      ["notAssessed", "Not checked", "children"],
      ["assessed", "Up-to-date checks", "children"],
      ["met", "Met", "children"],
      ["shareMet", "Share met", "share"],
      ["lower", "Lower limit", "share"],
      ["upper", "Upper limit", "share"],
      ["lowest", "Lowest possible share", "share"],
      ["highest", "Highest possible share", "share"],
    ]),
    rows: [
      ["GM1", "gross motor", band, 12, 3, 5, 2, 1, 0, 1, 10, 8, 0.8, 0.49, 0.94, 8 / 12, 10 / 12],
      ["SP1", "speech", band, 12, 2, 4, 3, 2, 0, 1, 9, 6, 6 / 9, 0.35, 0.88, 6 / 12, 9 / 12],
      ["SP2", "speech", band, 12, 4, 5, 2, 0, 1, 0, 12, 9, 9 / 12, 0.47, 0.91, 9 / 12, 9 / 12],
      ["all", "gross motor", band, 12, 3, 5, 2, 1, 0, 1, 10, 8, 0.8, null, null, 8 / 12, 10 / 12],
      ["all", "speech", band, 24, 6, 9, 5, 2, 1, 1, 21, 15, 15 / 21, null, null, 15 / 24, 18 / 24],
    ],
    notes: ["Up-to-date checks are the children less those not checked and those who need a recheck."],
  };
}

export function ageWhenMetTable(): Table {
  return {
    id: "age-when-met",
    title: "Age when each skill was met",
    population: "Children ever in the program and checked for the skill",
    columns: columns([
      ["skill", "Skill", "text"],
      ["children", "Children", "children"],
      ["hadAtFirstLook", "Already met at first check", "children"],
      ["interval", "Met between two checks", "children"],
      ["notMet", "Not met by last check", "children"],
      ["method", "Method", "text"],
      ["p50", "Half had met it at", "months (mean length)"],
      ["p50Lower", "Half: lower limit", "months (mean length)"],
      ["p50Upper", "Half: upper limit", "months (mean length)"],
      ["p75", "75% had met it at", "months (mean length)"],
      ["p90", "90% had met it at", "months (mean length)"],
      ["opens", "Window opens", "months"],
      ["closes", "Window closes", "months"],
      ["shareByClose", "Share met by closing", "share"],
      ["shareByCloseLower", "Share by closing: lower limit", "share"],
      ["shareByCloseUpper", "Share by closing: upper limit", "share"],
      ["expectedShare", "Share the source expects by closing", "share"],
      ["reason", "Why not estimated", "text"],
    ]),
    rows: [
      ["GM1", 20, 3, 14, 3, "NPMLE", 12.5, 11.5, 13, 14.5, 16, 8.2, 17.6, 0.9, 0.8, 0.96, 0.99, null],
      ["SP1", 18, 2, 9, 7, "NPMLE", 14, 12, null, null, null, null, 15, 0.5, 0.3, 0.78, 0.75, null],
      [
        "SP2",
        15,
        15,
        0,
        0,
        null,
        null,
        null,
        null,
        null,
        null,
        6,
        9,
        null,
        null,
        null,
        null,
        "every child had it at the first look",
      ],
    ],
    notes: ["Visits only bracket the day a skill was met."],
  };
}

/** 9 of 10 and 4 of 5 pairs agree. */
function agreementTable(): Table {
  return {
    id: "agreement",
    title: "How often two observers agreed",
    population: "Children ever in the program",
    columns: columns([
      ["skill", "Skill", "text"],
      ["pairs", "Pairs of observers", "pairs"],
      ["percent", "Agreement", "percent"],
      ["kappa", "Kappa", "number"],
    ]),
    rows: [
      ["GM1", 10, 90, 0.8],
      ["SP1", 5, 80, null],
    ],
    notes: [],
  };
}

export function skillStatusTable(): Table {
  const rows: TableValue[][] = [["AF-001", "GM1", "gross motor", 13.2, "in window", "2026-08-02"]];
  return {
    id: "skill-status",
    title: "Each child and each skill (internal)",
    population: "Children in the program on the as-of date",
    columns: columns([
      ["child", "Child", "text"],
      ["skill", "Skill", "text"],
      ["area", "Area", "text"],
      ["ageMonths", "Age", "months"],
      ["window", "Window", "text"],
      ["lastLook", "Last checked", "date"],
    ]),
    rows,
    notes: [],
    internal: true,
  };
}

function finding(rule: string, severity: "error" | "warning" | "note", cell: string) {
  const advice = "Look the day up and correct it";
  return {
    rule,
    severity,
    table: "Observations",
    sheet: "Visits",
    cell,
    expected: "a day up to the as-of date",
    advice,
  };
}

function columns(list: readonly (readonly [key: string, label: string, unit: TableUnit])[]): TableColumn[] {
  return list.map(([key, label, unit]) => ({ key, label, unit }));
}
