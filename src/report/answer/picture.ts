import type { ChartOut, SeriesOut, SheetOut } from "../../workbook/sheets";
import { barSeries } from "../sheets/bar-series";
import { NumbersBehind } from "../sheets/chart-grid";
import { pointSeries, type SeriesPoint } from "../sheets/point-series";

/** A picture by its values, before it has a place: the report's pages, the pane and a release all draw it from these. */
export type Picture = BarPicture | CurvePicture;

interface Shared extends Pick<ChartOut, "title" | "altText" | "x" | "y" | "legend"> {
  /** Of bars and lines, what a table beside the picture says for each label and the picture does not draw. */
  readonly told?: readonly { readonly name: string; readonly values: readonly (string | number | null)[] }[];
}

/** Bars, columns, or lines over labels: every part has one value a label. */
export interface BarPicture extends Shared {
  readonly kind: Exclude<ChartOut["kind"], "curve">;
  readonly parts: readonly Pick<SeriesOut, "name" | "look" | "continues" | "guide">[];
  readonly bars: readonly { readonly label: string; readonly values: readonly (number | null)[] }[];
}

export interface CurvePicture extends Shared {
  readonly kind: "curve";
  readonly lines: readonly PictureLine[];
}

export interface PictureLine extends Omit<SeriesOut, "x" | "y"> {
  readonly points: readonly SeriesPoint[];
}

export type PicturePlace = Pick<ChartOut, "at" | "widthPixels" | "heightPixels">;

/** The chart over cells; its numbers are added to those behind. Without a title where the sentence beside it is one. */
export function chartOf(picture: Picture, place: PicturePlace, numbers: NumbersBehind, titled: boolean): ChartOut {
  const { kind, altText, x, y, legend } = picture;
  const shared = { kind, altText, x, y, legend, ...place, title: titled ? picture.title : "" };
  if (picture.kind === "curve") {
    const series = picture.lines.map(({ points, name, look, ...more }) => ({
      ...pointSeries(name, points, look, numbers, [x.title || "Across", y.title || "Up"]),
      ...more,
    }));
    return { ...shared, series };
  }
  const told = picture.told ?? [];
  const rows = picture.bars.map(({ label, values }, at) => ({
    label,
    values: [...values, ...told.map((each) => each.values[at] ?? null)],
  }));
  const columns = barSeries(
    [...picture.parts, ...told.map(({ name }) => ({ name, look: "tick" as const }))],
    rows,
    numbers,
  );
  const series = picture.parts.map((part, at) => ({ ...(columns[at] as SeriesOut), ...part }));
  return { ...shared, series, told: columns.slice(series.length).map(({ name, y: cells }) => ({ name, cells })) };
}

/** The picture on a small sheet of its own, for a host that draws charts from cells. */
export function pictureSheet(picture: Picture): { readonly sheet: SheetOut; readonly chart: ChartOut } {
  const numbers = new NumbersBehind(0, picture.title, 0);
  const chart = chartOf(picture, { at: { row: 0, column: 0 }, widthPixels: 480, heightPixels: 240 }, numbers, true);
  return { sheet: { name: picture.title, columns: [], rows: numbers.cells() }, chart };
}
