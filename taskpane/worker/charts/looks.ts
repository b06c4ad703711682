import type { INK } from "../../../src/workbook/ink";
import { isFill, lineOf, markOf, SERIES_LOOKS, type SeriesLook } from "../../../src/workbook/series-looks";
import type { SeriesOut } from "../../../src/workbook/sheets";
import type { LegendEntry } from "../report/made";

/** Colours are the pane's own custom properties, so that light, dark and forced colours hold for a drawn chart too. */
export const CHART_INK = {
  text: "var(--wl-ink)",
  quiet: "var(--wl-quiet)",
  accent: "var(--wl-accent)",
  paper: "var(--wl-paper)",
  pale: "var(--wl-pale)",
  rule: "var(--wl-rule)",
} as const;

/** The inks of a drawn chart: the page has no lighter one than `pale`, whose outline keeps it seen. */
const INKS: Readonly<Record<keyof typeof INK, string>> = {
  ...CHART_INK,
  tint: CHART_INK.pale,
  hatch: CHART_INK.pale,
  light: CHART_INK.pale,
  step1: CHART_INK.pale,
  step2: CHART_INK.pale,
  step3: CHART_INK.pale,
};

/** Patterns stand once in the page, as `ChartPatterns` draws them. */
const PATTERNS = { stripes: "url(#wl-striped)", lines: "url(#wl-lined)", diamonds: "url(#wl-crossed)" } as const;

export function fillOf(look: SeriesLook): string {
  const drawn = SERIES_LOOKS[look];
  if (drawn.kind === "clear") return "transparent";
  if (drawn.kind !== "fill") return CHART_INK.pale;
  if (drawn.pattern) return PATTERNS[drawn.pattern];
  return drawn.ink === "pale" ? "url(#wl-dotted)" : INKS[drawn.ink];
}

export interface LineLook {
  readonly colour: string;
  readonly width: number;
  readonly dash: readonly number[];
}

/** Of a line one pixel wide. */
const DASHES = { solid: [1, 0], dash: [3.5, 2], dots: [1, 1.5], dashDot: [5, 1.5, 1, 1.5] } as const;
const PIXELS_IN_POINT = 1.1;

/** Null where the look joins nothing. A band is drawn as a breadth, not as a line. */
export function lineLookOf(look: SeriesLook): LineLook | null {
  const line = SERIES_LOOKS[look].kind === "line" ? lineOf(look) : null;
  if (!line) return null;
  const width = Math.round(line.points * PIXELS_IN_POINT * 2) / 2;
  return { colour: INKS[line.ink], width, dash: DASHES[line.dash].map((part) => part * width) };
}

export interface MarkLook {
  /** As Vega names it, and the legend. */
  readonly shape: "diamond" | "circle" | "square" | "triangle" | "stroke";
  /** Square pixels. */
  readonly size: number;
  readonly paint: string;
}

/** Of a mark one point wide; a stroke is all length. */
const AREA = 1.3;
const AREA_OF_STROKE = 2;

/** Null where the look has no marks. */
export function markLookOf(look: SeriesLook): MarkLook | null {
  const mark = markOf(look);
  if (!mark) return null;
  const paint = INKS[mark.ink];
  if (mark.shape === "dash") return { shape: "stroke", size: mark.size ** 2 * AREA_OF_STROKE, paint };
  return { shape: mark.shape, size: mark.size ** 2 * AREA, paint };
}

/** What the chart does not name itself, each look once. */
export function legendOf(series: readonly SeriesOut[]): LegendEntry[] {
  const told = series.filter(({ named, continues, look }) => !named && !continues && look !== "clear");
  return [...new Set(told.map(({ look }) => look))].map((look) => {
    const names = told.filter((each) => each.look === look).map(({ name }) => name);
    const [first = ""] = names;
    return entryOf(names.length > MOST_NAMES ? `${first}, and so on` : names.join("; "), look);
  });
}

/** A look that many series share is told by the first of them. */
const MOST_NAMES = 2;

function entryOf(name: string, look: SeriesLook): LegendEntry {
  if (look === "band") return { name, shape: "fill", paint: CHART_INK.pale, dash: "" };
  if (isFill(look)) return { name, shape: "fill", paint: fillOf(look), dash: "" };
  const [line, mark] = [lineLookOf(look), markLookOf(look)];
  if (line) return { name, shape: "line", paint: line.colour, dash: line.dash.join(" ") };
  return { name, shape: mark?.shape ?? "circle", paint: mark?.paint ?? CHART_INK.text, dash: "" };
}
