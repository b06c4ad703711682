import type { Skill } from "../../records/records";
import type { Table } from "../../tables/table";
import type { ChartOut, SeriesLook, SeriesOut, SheetOut } from "../../workbook/sheets";
import type { AgeCurve, Report } from "../report";
import type { NumbersBehind } from "./chart-grid";
import { ChartPage, type ChartPlace } from "./chart-page";
import { bandPoints, curvePoints, type Point } from "./curve-points";
import { pointSeries } from "./point-series";
import { readTable } from "./read-table";
import { expectedInWords, skillsById, windowInWords } from "./skill-words";
import { capital } from "../../words/numbers";

const CHART_PIXELS = 340;
const LINES: readonly SeriesLook[] = ["line", "dashed", "dottedLine", "longDashed"];

/** One chart an area: the skill that most children gained here, with its window. Null where no curve could be estimated. */
export function curveCharts(table: Table, report: Report): SheetOut | null {
  const drawn = chosen(table, report);
  if (drawn.length === 0) return null;
  const page = new ChartPage(table, report, READING, [{ width: 40 }, { width: 14 }, { width: 14 }]);
  const places = page.places(drawn.length, 3, CHART_PIXELS);
  return page.finished(drawn.map((each, index) => curveChart(each, page.numbers, places[index] as ChartPlace)));
}

const READING =
  "For each area, the skill that most children gained while followed. Line: estimated share of children who have met it by each age. Hatched: its window. Diamond: the share of children that the window's source expects by its close; windows of different sources mean different things, so read the words under each chart.";

interface Drawn {
  readonly skill: Skill;
  readonly area: string;
  readonly curves: readonly AgeCurve[];
}

function chosen(table: Table, report: Report): Drawn[] {
  const read = readTable(table);
  const skills = skillsById(report.print.skills);
  const best = new Map<string, { readonly skill: Skill; readonly gained: number }>();
  for (const id of new Set(report.print.curves.map((curve) => curve.skill))) {
    const skill = skills.get(id);
    if (!skill) continue;
    const rows = table.rows.filter((row) => read.text(row, "skill") === id);
    const gained = read.sum(rows, "interval");
    if (gained > (best.get(skill.area)?.gained ?? 0)) best.set(skill.area, { skill, gained });
  }
  return [...best].map(([area, { skill }]) => ({
    area,
    skill,
    curves: report.print.curves.filter((curve) => curve.skill === skill.id).slice(0, LINES.length),
  }));
}

function curveChart({ skill, area, curves }: Drawn, numbers: NumbersBehind, place: ChartPlace): ChartOut {
  const points = curves.map(curvePoints);
  const ends = points.flat().map(([months]) => months);
  const min = Math.min(0, Math.floor(Math.min(...ends) / 3) * 3);
  const max = Math.ceil((Math.max(...ends, skill.closesMonths ?? 0) + 0.5) / 6) * 6;
  const window = `${windowInWords(skill)}; ${skill.basis === "" ? "no basis given" : skill.basis}`;
  return {
    kind: "curve",
    title: `${capital(area)}: ${skill.label}`,
    altText: `${skill.label}: cumulative share of children who have met it by age in months. ${described(curves, points)} Window ${window}; ${expectedInWords(skill)}.`,
    ...place,
    series: [
      ...windowSeries(skill, max - min, numbers),
      ...curves.map((curve, index) =>
        seriesOf(curve.group.join(", ") || "Share met", points[index] ?? [], LINES[index] ?? "line", numbers),
      ),
      ...expectedSeries(skill, numbers),
    ],
    x: { title: `Age in months; window ${window}`, min, max, step: max - min > 18 ? 6 : 3, format: "number" },
    y: { title: "", min: 0, max: 1, step: 0.25, format: "wholeShare" },
    legend: "bottom",
  };
}

/** The age at which each curve first reaches a half, for those who do not see it. */
function described(curves: readonly AgeCurve[], points: readonly (readonly Point[])[]): string {
  return curves
    .map((curve, index) => {
      const last = points[index]?.at(-1);
      const who = curve.group.length === 0 ? "All children" : curve.group.join(", ");
      return last
        ? `${who}: ${(100 * last[1]).toFixed(0)}% by ${last[0].toFixed(1)} months, the end of the curve.`
        : "";
    })
    .join(" ");
}

function windowSeries(skill: Skill, axisMonths: number, numbers: NumbersBehind): SeriesOut[] {
  const { opensMonths, closesMonths } = skill;
  if (closesMonths === null) return [];
  if (opensMonths === null) {
    const edge: Point[] = [
      [closesMonths, 0],
      [closesMonths, 1],
    ];
    return [seriesOf("Close", edge, "edge", numbers)];
  }
  return [seriesOf("Window", bandPoints(opensMonths, closesMonths, axisMonths), "band", numbers)];
}

function expectedSeries(skill: Skill, numbers: NumbersBehind): SeriesOut[] {
  if (skill.expectedShare === null || skill.closesMonths === null) return [];
  return [seriesOf("Source's share", [[skill.closesMonths, skill.expectedShare]], "point", numbers)];
}

function seriesOf(name: string, points: readonly Point[], look: SeriesLook, numbers: NumbersBehind): SeriesOut {
  return pointSeries(name, points, look, numbers, ["Months", "Share"]);
}
