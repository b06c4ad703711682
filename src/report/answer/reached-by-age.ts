import type { Skill } from "../../records/records";
import { listed, plural } from "../../words/numbers";
import type { AgeCurve, Report } from "../report";
import { type Row, readTable, type TableReader } from "../sheets/read-table";
import { skillsById } from "../sheets/skill-words";
import { curvePoints } from "../sheets/curve-points";
import { notThere, type ReportFinding, tableOf, withoutTable } from "./finding";
import type { CurvePicture, PictureLine } from "./picture";

const ID = "reached-by-age";
const MOST_SKILLS = 3;

/** How many children met three skills by each age. The reader names the skills; else they are those that say most. */
export function reachedByAge(report: Report, named: readonly string[]): ReportFinding {
  const table = tableOf(report, "age-when-met");
  if (!table) return withoutTable(report, ID, "age-when-met", "The ages when children met each skill");
  const read = readTable(table);
  const shown = shownSkills(report, named).flatMap((skill) => {
    const row = table.rows.find((each) => read.text(each, "skill") === skill.id);
    const curve = report.print.curves.find((each) => each.skill === skill.id);
    const half = row ? read.number(row, "p50") : null;
    return row && curve && half !== null ? [{ skill, row, curve, half }] : [];
  });
  const [first] = shown;
  if (!first) return notThere(ID, "The ages when children met each skill", TOO_FEW);
  const ages = shown.map(({ skill, half }, at) => `“${skill.label}” by ${half.toFixed(1)} months (${LETTERS[at]})`);
  return {
    id: ID,
    headline: `Half of the children${ofGroup(first.curve)} met ${listed(ages)}.`,
    below: [shown.map((each, at) => rangeOf(each, read, LETTERS[at] ?? "")).join("; "), groupOf(first.curve)].filter(
      (line) => line !== "",
    ),
    picture: picture(shown),
  };
}

/** `A: likely 12.6 to 14.4, 203 children`. */
function rangeOf({ row }: Shown, read: TableReader, letter: string): string {
  const [lower, upper] = [read.number(row, "p50Lower"), read.number(row, "p50Upper")];
  const children = plural(read.number(row, "children") ?? 0, "child", "children");
  const range =
    lower === null || upper === null ? "no likely range" : `likely ${lower.toFixed(1)} to ${upper.toFixed(1)}`;
  return `${letter}: ${range}, ${children}`;
}

/** Names of the lines where they meet the half: short enough that no program breaks them. */
const LETTERS = ["A", "B", "C"] as const;

const TOO_FEW = "Too few children were checked before and after they met a skill.";

interface Shown {
  readonly skill: Skill;
  readonly row: Row;
  readonly curve: AgeCurve;
  readonly half: number;
}

/** Those named; else, of the skills that many children met between two checks, the one met youngest, a middle one, the last. */
export function shownSkills(report: Report, named: readonly string[]): Skill[] {
  const skills = skillsById(report.print.skills);
  const wanted = named.flatMap((id) => skills.get(id) ?? []);
  if (wanted.length > 0) return wanted.slice(0, MOST_SKILLS);
  const table = tableOf(report, "age-when-met");
  if (!table) return [];
  const read = readTable(table);
  const known = table.rows.flatMap((row) => {
    const [skill, half] = [skills.get(read.text(row, "skill")), read.number(row, "p50")];
    return skill && half !== null ? [{ skill, half, met: read.number(row, "interval") ?? 0 }] : [];
  });
  const most = Math.max(0, ...known.map(({ met }) => met));
  const byAge = known
    .filter(({ met }) => met >= MANY * most)
    .sort((a, b) => a.half - b.half)
    .map(({ skill }) => skill);
  if (byAge.length <= MOST_SKILLS) return byAge;
  return [0, Math.floor(byAge.length / 2), byAge.length - 1].map((at) => byAge[at] as Skill);
}

/** Of the children who met the skill that most met. */
const MANY = 0.7;

/** Where figures stand by site, the first site's are shown: the sentence says whose they are, wherever it is read. */
function ofGroup({ group }: AgeCurve): string {
  return group.length === 0 ? "" : ` of ${group.join(", ")}`;
}

function groupOf({ group }: AgeCurve): string {
  return group.length === 0 ? "" : `Children of ${group.join(", ")}; the other groups are in the data workbook.`;
}

const LOOKS = ["line", "dashed", "dottedLine"] as const;

function picture(shown: readonly Shown[]): CurvePicture {
  const points = shown.map(({ curve }) => curvePoints(curve));
  const last = Math.max(...points.flat().map(([months]) => months));
  return {
    kind: "curve",
    title: "Children who met three skills by each age",
    altText: `Lines, one per skill: the share of children who met it by each age in months. ${shown.map(({ skill, half }) => `${skill.label}: half by ${half.toFixed(1)} months.`).join(" ")}`,
    lines: [
      ...shown.map(({ skill }, at): PictureLine => ({
        name: skill.label,
        look: LOOKS[at] ?? "line",
        points: points[at] ?? [],
      })),
      ...shown.map(({ skill, half }, at): PictureLine => ({
        name: LETTERS[at] ?? skill.label,
        look: "point",
        named: true,
        points: [[half, 0.5]],
      })),
    ],
    x: { title: "Age in months", min: 0, max: Math.ceil((last + 9) / 6) * 6, step: 6, format: "number" },
    y: { title: "", min: 0, max: 1, step: 0.5, format: "wholeShare" },
    legend: "none",
  };
}
