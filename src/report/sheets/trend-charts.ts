import type { Table } from "../../tables/table";
import type { ChartOut, SeriesLook, SheetOut } from "../../workbook/sheets";
import type { CellRange } from "../../workbook/workbook";
import type { Report } from "../report";
import { type BarPart, labelledColumns } from "./bar-series";
import type { NumbersBehind } from "./chart-grid";
import { ChartPage, type ChartPlace } from "./chart-page";
import { isProvisional } from "./sentences/trend";
import { type AreaLines, areaLines, type GroupLine } from "./trend-lines";
import { runsBetweenStops } from "./trend-runs";
import { capital, counted, percentOf } from "../../words/numbers";

const CHART_PIXELS = 310;
/** More lines than this could not be told apart. */
const GROUP_LOOKS: readonly SeriesLook[] = ["joined", "joinedDashed", "joinedDotted", "joinedLongDashed"];

/** One chart an area: the share of child-skills met, quarter by quarter; null where nobody has a current look. */
export function trendCharts(table: Table, report: Report): SheetOut | null {
  const { quarters, areas } = report.print.trend ?? { quarters: [], areas: [] };
  const labels = quarters.map(({ quarter }) => quarter);
  const all = areaLines(table, labels);
  if (all.length === 0) return null;
  const lines = all.map(({ area, groups }) => ({ area, groups: groups.slice(0, GROUP_LOOKS.length) }));
  const scene: Scene = {
    quarters: labels,
    stops: quarters.map(({ correctionStops }) => correctionStops > 0),
    provisional: isProvisional(table),
    standardised: new Map(lines[0]?.groups.length === 1 ? areas.map(({ area, shares }) => [area, shares]) : []),
    lowest: lowestMark(lines),
  };
  const numberColumns = Array.from({ length: 3 * GROUP_LOOKS.length }, () => ({ width: 14 }));
  const page = new ChartPage(table, report, reading(report, scene, all), [{ width: 26 }, ...numberColumns]);
  const places = page.places(lines.length, 3, CHART_PIXELS);
  return page.finished(lines.map((each, index) => areaChart(each, scene, page.numbers, places[index] as ChartPlace)));
}

/** What all charts of the sheet have in common. */
interface Scene {
  readonly quarters: readonly string[];
  /** True where correcting of age stopped for some of the children. */
  readonly stops: readonly boolean[];
  readonly provisional: boolean;
  readonly standardised: ReadonlyMap<string, readonly (number | null)[]>;
  /** Where the axis of shares begins. */
  readonly lowest: number;
}

function lowestMark(lines: readonly AreaLines[]): number {
  const cells = lines.flatMap(({ groups }) => groups.flatMap((group) => group.cells));
  const least = Math.min(...cells.map(({ met, of }) => (of === 0 ? 1 : met / of)));
  return least < 0.5 ? 0 : Math.floor(least * 10 - 0.5) / 10;
}

function reading({ print }: Report, scene: Scene, [first]: readonly AreaLines[]): string {
  const stops = (print.trend?.quarters ?? []).filter(({ correctionStops }) => correctionStops > 0);
  const listed = stops.map(({ quarter, correctionStops }) => `${quarter} (${correctionStops})`).join(", ");
  const groups = first?.groups.length ?? 0;
  return [
    "Counted in child-skills: one child and one skill. Marks: the share met of those with a current look.",
    ...(scene.standardised.size > 0 ? ["Dashes: the same, with every site weighted alike in all quarters."] : []),
    ...(scene.provisional ? ["Lighter mark: the last quarter, provisional."] : []),
    ...(scene.lowest > 0 ? [`The axis begins at ${Math.round(100 * scene.lowest)}%.`] : []),
    ...(groups > GROUP_LOOKS.length ? [`Of ${groups} groups the first ${GROUP_LOOKS.length} are drawn.`] : []),
    stops.length === 0
      ? "Correcting of age stopped for nobody within these quarters."
      : `No line leads into a quarter within which correcting of age stopped for children followed at its end, since their age jumps there: ${listed}.`,
  ].join(" ");
}

function areaChart({ area, groups }: AreaLines, scene: Scene, numbers: NumbersBehind, place: ChartPlace): ChartOut {
  const { quarters, provisional, lowest } = scene;
  const standardised = scene.standardised.get(area);
  const columns: Column[] = [
    // First, and so behind the others.
    ...(standardised ? [{ name: "Sites weighted alike", look: "tick" as const, values: standardised }] : []),
    ...groups.flatMap((group, at) => groupColumns(group, GROUP_LOOKS[at] as SeriesLook, scene, groups.length > 1)),
  ].filter(({ values }) => values.some((value) => value !== null));
  const told = groups.map(({ name, cells }) => ({
    name: name === "" ? "Met, of those with a current look" : `${name}: met, of those with a current look`,
    values: cells.map(({ met, of }) => `${counted(met)} of ${counted(of)}`),
  }));
  const all = [...columns, ...told];
  const rows = quarters.map((label, at) => ({ label, values: all.map(({ values }) => values[at] ?? null) }));
  const behind = labelledColumns(
    all.map(({ name }) => name),
    rows,
    numbers,
  );
  return {
    kind: "line",
    title: titleOf(area, groups),
    altText: `${capital(area)}, share of child-skills met at the end of each quarter. ${groups.map((group) => inWords(group, quarters)).join(" ")}${provisional ? " The last quarter is provisional." : ""}`,
    ...place,
    series: columns.map(({ name, look, continues = false }, at) => ({
      ...{ name, look, continues },
      ...{ x: behind.labels, y: behind.columns[at] as CellRange },
    })),
    x: { title: "Quarter" },
    y: { title: "", min: lowest, max: 1, step: lowest === 0 ? 0.25 : 0.1, format: "wholeShare" },
    legend: groups.length > 1 ? "bottom" : "none",
    told: told.map(({ name }, at) => ({ name, cells: behind.columns[columns.length + at] as CellRange })),
  };
}

interface Column extends BarPart {
  readonly continues?: boolean;
  readonly values: readonly (number | null)[];
}

/** Two series take turns, so that the line of neither runs through a stop; the provisional quarter stands by itself. */
function groupColumns(
  { name, cells }: GroupLine,
  look: SeriesLook,
  { stops, provisional }: Scene,
  isOneOfSeveral: boolean,
): Column[] {
  const own = name === "" ? "Share met" : name;
  const shares = cells.map(({ met, of }) => (of === 0 ? null : met / of));
  const last = provisional ? shares.length - 1 : -1;
  const [odd, even] = runsBetweenStops(
    shares.map((share, at) => (at === last ? null : share)),
    stops,
  );
  return [
    { name: own, look, values: odd },
    { name: `${own}, after a stop`, look, continues: true, values: even },
    {
      name: `${own}, provisional`,
      look: "lightPoint",
      // Its words stand above the charts; a legend of many entries would leave the lines no room.
      continues: isOneOfSeveral,
      values: shares.map((share, at) => (at === last ? share : null)),
    },
  ];
}

function titleOf(area: string, groups: readonly GroupLine[]): string {
  const ends = groups.length === 1 ? (groups[0]?.cells.filter(({ of }) => of > 0) ?? []) : [];
  const [first, last] = [ends[0], ends.at(-1)];
  if (!first || !last || first === last) return `${capital(area)}: share of child-skills met`;
  return `${capital(area)}: ${percentOf(first.met, first.of)} to ${percentOf(last.met, last.of)}`;
}

function inWords({ name, cells }: GroupLine, quarters: readonly string[]): string {
  const points = cells.flatMap(({ met, of }, at) => (of === 0 ? [] : [`${quarters[at]} ${percentOf(met, of)}`]));
  return `${name === "" ? "" : `${name}: `}${points.join("; ")}.`;
}
