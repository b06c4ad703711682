import { bandLabel, USUAL_EDGES } from "../../age/bands";
import type { Table } from "../../tables/table";
import type { ChartOut, SeriesLook, SeriesOut, SheetOut } from "../../workbook/sheets";
import type { Report } from "../report";
import type { NumbersBehind } from "./chart-grid";
import { ChartPage, type ChartPlace } from "./chart-page";
import { ALL_SKILLS, type Row, readTable, type TableReader } from "./read-table";
import { capital, counted, percentOf } from "../../words/numbers";

const BOXES: readonly { readonly key: string; readonly label: string; readonly look: SeriesLook }[] = [
  { key: "hadAtFirstLook", label: "Had at first look", look: "solid" },
  { key: "gained", label: "Gained here", look: "striped" },
  { key: "notMet", label: "Not met", look: "hollow" },
  { key: "outOfDate", label: "Out of date", look: "lined" },
  { key: "lost", label: "Lost", look: "crossed" },
  { key: "notAssessed", label: "Not assessed", look: "pale" },
];

const AREAS_PIXELS = 250;
const BANDS_PIXELS = 240;

/** Where the records stand: each area over all ages, then each area by age band; null where there is nobody to draw. */
export function metByBandCharts(table: Table, report: Report): SheetOut | null {
  const read = readTable(table);
  const all = table.rows.filter((row) => read.text(row, "skill") === ALL_SKILLS);
  if (all.length === 0) return null;
  const page = new ChartPage(table, report, READING, [{ width: 34 }, ...BOXES.map(() => ({ width: 11 }))]);
  const areas = [...new Set(all.map((row) => read.text(row, "area")))];
  const [above] = page.places(1, 1, AREAS_PIXELS) as [ChartPlace];
  const below = page.places(areas.length, 3, BANDS_PIXELS);
  const inOrder = inBandOrder(all, read, report);
  return page.finished([
    areasChart(read, all, areas, page.numbers, above),
    ...areas.map((area, index) => bandsChart(read, inOrder, area, page.numbers, below[index] as ChartPlace)),
  ]);
}

const READING =
  "Counted in child-skills: one child and one skill. Each bar is all of them, shared out over the six boxes; the number in brackets says how many they are. Children are young for many skills, so a share met far below 100% is as it should be.";

/** Groups may lack a band, so that the rows' own order is no order of age. */
function inBandOrder(rows: readonly Row[], read: TableReader, { settings }: Report): Row[] {
  const edges = Array.isArray(settings["edges"]) ? settings["edges"].map(Number) : USUAL_EDGES;
  const labels = Array.from({ length: edges.length + 1 }, (_, band) => bandLabel(band, edges));
  return [...rows].sort((a, b) => labels.indexOf(read.text(a, "band")) - labels.indexOf(read.text(b, "band")));
}

function areasChart(
  read: TableReader,
  all: readonly Row[],
  areas: readonly string[],
  numbers: NumbersBehind,
  place: ChartPlace,
): ChartOut {
  const rowsOf = (area: string) => all.filter((row) => read.text(row, "area") === area);
  const shares = areas.map(
    (area) => `${area} ${percentOf(metOf(read, rowsOf(area)), read.sum(rowsOf(area), "children"))}`,
  );
  return {
    kind: "bar share stacked",
    title: "Each area, all ages: where the child-skills stand",
    altText: `Stacked bars, one an area, of child-skills by box. Met, of all child-skills: ${shares.join("; ")}.`,
    ...place,
    series: boxSeries(
      read,
      areas.map((area) => ({ label: capital(area), rows: rowsOf(area) })),
      numbers,
    ),
    x: { title: "", reversed: true },
    y: { title: "", min: 0, max: 1, step: 0.25, format: "wholeShare" },
    legend: "right",
  };
}

function bandsChart(
  read: TableReader,
  all: readonly Row[],
  area: string,
  numbers: NumbersBehind,
  place: ChartPlace,
): ChartOut {
  const rows = all.filter((row) => read.text(row, "area") === area);
  const bands = [...new Set(rows.map((row) => read.text(row, "band")))];
  const rowsOf = (band: string) => rows.filter((row) => read.text(row, "band") === band);
  const shares = bands.map(
    (band) => `${band} ${percentOf(metOf(read, rowsOf(band)), read.sum(rowsOf(band), "children"))}`,
  );
  return {
    kind: "column share stacked",
    title: `${capital(area)}, by age in months`,
    altText: `Stacked columns for ${area}, one an age band, of child-skills by box. Met, of all child-skills: ${shares.join("; ")}.`,
    ...place,
    series: boxSeries(
      read,
      bands.map((band) => ({ label: band.replace(" months", ""), rows: rowsOf(band) })),
      numbers,
    ),
    x: { title: "" },
    y: { title: "", min: 0, max: 1, step: 0.25, format: "wholeShare" },
    legend: "none",
  };
}

interface Bar {
  readonly label: string;
  readonly rows: readonly Row[];
}

function boxSeries(read: TableReader, bars: readonly Bar[], numbers: NumbersBehind): SeriesOut[] {
  numbers.add(["", ...BOXES.map(({ label }) => label)]);
  for (const { label, rows } of bars) {
    const name = `${label} (${counted(read.sum(rows, "children"))})`;
    numbers.add([name, ...BOXES.map(({ key }) => read.sum(rows, key))]);
  }
  const x = numbers.lastRows(bars.length, 0);
  return BOXES.map(({ label, look }, index) => ({
    name: label,
    x,
    y: numbers.lastRows(bars.length, index + 1),
    look,
  }));
}

function metOf(read: TableReader, rows: readonly Row[]): number {
  return read.sum(rows, "met");
}
