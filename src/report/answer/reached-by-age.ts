import type { Skill } from "../../records/records";
import { plural } from "../../words/numbers";
import type { AgeCurve, Report } from "../report";
import { type Row, readTable } from "../sheets/read-table";
import { skillsById } from "../sheets/skill-words";
import { curvePoints } from "../sheets/curve-points";
import { notThere, type ReportFinding, tableOf } from "./finding";
import type { CurvePicture, PictureLine } from "./picture";

const ID = "reached-by-age";
const MOST_SKILLS = 3;

/** How many children met three skills by each age. The reader names the skills; else they are those that say most. */
export function reachedByAge(report: Report, named: readonly string[]): ReportFinding {
  const table = tableOf(report, "age-when-met");
  if (!table) return notThere(ID, "The ages when children met each skill");
  const read = readTable(table);
  const shown = shownSkills(report, named).flatMap((skill) => {
    const row = table.rows.find((each) => read.text(each, "skill") === skill.id);
    const curve = report.print.curves.find((each) => each.skill === skill.id);
    const half = row ? read.number(row, "p50") : null;
    return row && curve && half !== null ? [{ skill, row, curve, half }] : [];
  });
  const [first] = shown;
  if (!first) return { ...notThere(ID, "The ages when children met each skill"), below: [TOO_FEW] };
  const ages = shown.map(({ skill, half }) => `“${skill.label}” by ${half.toFixed(1)} months`);
  return {
    id: ID,
    headline: `Half of the children met ${ages[0]}${ages.length > 1 ? `, ${ages.slice(1).join(", and ")}` : ""}.`,
    below: [shown.map(({ row }) => rangeOf(report, row)).join("; "), groupOf(first.curve)].filter(
      (line) => line !== "",
    ),
    picture: picture(shown),
  };

  function rangeOf({ settings }: Report, row: Row): string {
    const [lower, upper] = [read.number(row, "p50Lower"), read.number(row, "p50Upper")];
    const children = plural(read.number(row, "children") ?? 0, "child", "children");
    const level = typeof settings["level"] === "number" ? Math.round(100 * settings["level"]) : 95;
    if (lower === null || upper === null) return `no likely range (${children})`;
    return row === first?.row
      ? `${level}% likely ranges ${lower.toFixed(1)} to ${upper.toFixed(1)} (${children})`
      : `${lower.toFixed(1)} to ${upper.toFixed(1)} (${children})`;
  }
}

const TOO_FEW = "Too few children were checked before and after they met a skill.";

interface Shown {
  readonly skill: Skill;
  readonly row: Row;
  readonly curve: AgeCurve;
  readonly half: number;
}

/** Those named; else of three areas the skill that most children met between two checks, the youngest skill first. */
export function shownSkills(report: Report, named: readonly string[]): Skill[] {
  const skills = skillsById(report.print.skills);
  const wanted = named.flatMap((id) => skills.get(id) ?? []);
  if (wanted.length > 0) return wanted.slice(0, MOST_SKILLS);
  const table = tableOf(report, "age-when-met");
  if (!table) return [];
  const read = readTable(table);
  const best = new Map<string, { readonly skill: Skill; readonly met: number }>();
  for (const row of table.rows) {
    const skill = skills.get(read.text(row, "skill"));
    const met = read.number(row, "interval") ?? 0;
    if (!skill || read.number(row, "p50") === null) continue;
    if (met > (best.get(skill.area)?.met ?? 0)) best.set(skill.area, { skill, met });
  }
  const chosen = [...best.values()].sort((a, b) => b.met - a.met).slice(0, MOST_SKILLS);
  return chosen.map(({ skill }) => skill).sort((a, b) => (a.closesMonths ?? 0) - (b.closesMonths ?? 0));
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
      ...shown.map(({ skill, half }): PictureLine => ({
        name: `${skill.label}, ${half.toFixed(1)}`,
        look: "point",
        named: "right",
        points: [[half, 0.5]],
      })),
    ],
    x: { title: "Age in months", min: 0, max: Math.ceil((last + 9) / 6) * 6, step: 6, format: "number" },
    y: { title: "", min: 0, max: 1, step: 0.5, format: "wholeShare" },
    legend: "none",
  };
}
