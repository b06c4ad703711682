import { isFill, type SeriesLook, type SeriesOut } from "../../../src/workbook/sheets";
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

/** Patterns stand once in the page, as `ChartPatterns` draws them. */
const FILLS: Partial<Record<SeriesLook, string>> = {
  solid: CHART_INK.accent,
  striped: "url(#wl-striped)",
  hollow: CHART_INK.paper,
  lined: "url(#wl-lined)",
  crossed: "url(#wl-crossed)",
  pale: "url(#wl-dotted)",
  clear: "transparent",
};

export function fillOf(look: SeriesLook): string {
  return FILLS[look] ?? CHART_INK.pale;
}

export interface LineLook {
  readonly colour: string;
  readonly width: number;
  readonly dash: readonly number[];
}

const LINES: Partial<Record<SeriesLook, LineLook>> = {
  line: { colour: CHART_INK.accent, width: 2.5, dash: [1, 0] },
  joined: { colour: CHART_INK.accent, width: 2.5, dash: [1, 0] },
  dashed: { colour: CHART_INK.text, width: 2, dash: [7, 4] },
  dottedLine: { colour: CHART_INK.quiet, width: 2, dash: [2, 3] },
  longDashed: { colour: CHART_INK.text, width: 2, dash: [10, 3, 2, 3] },
  joinedDashed: { colour: CHART_INK.text, width: 2, dash: [7, 4] },
  joinedDotted: { colour: CHART_INK.quiet, width: 2, dash: [2, 3] },
  joinedLongDashed: { colour: CHART_INK.text, width: 2, dash: [10, 3, 2, 3] },
  edge: { colour: CHART_INK.quiet, width: 1, dash: [4, 3] },
};

/** Null where the look joins nothing. */
export function lineOf(look: SeriesLook): LineLook | null {
  return LINES[look] ?? null;
}

export interface MarkLook {
  /** As Vega names it, and the legend. */
  readonly shape: "diamond" | "circle" | "square" | "triangle" | "stroke";
  readonly size: number;
  readonly paint: string;
}

const MARKS: Partial<Record<SeriesLook, MarkLook>> = {
  point: { shape: "diamond", size: 110, paint: CHART_INK.text },
  lightPoint: { shape: "circle", size: 60, paint: CHART_INK.pale },
  joined: { shape: "circle", size: 45, paint: CHART_INK.accent },
  joinedDashed: { shape: "square", size: 45, paint: CHART_INK.text },
  joinedDotted: { shape: "triangle", size: 50, paint: CHART_INK.quiet },
  joinedLongDashed: { shape: "diamond", size: 60, paint: CHART_INK.text },
  tick: { shape: "stroke", size: 160, paint: CHART_INK.text },
};

/** Null where the look has no marks. */
export function markOf(look: SeriesLook): MarkLook | null {
  return MARKS[look] ?? null;
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
  const [line, mark] = [lineOf(look), markOf(look)];
  if (line) return { name, shape: "line", paint: line.colour, dash: line.dash.join(" ") };
  return { name, shape: mark?.shape ?? "circle", paint: mark?.paint ?? CHART_INK.text, dash: "" };
}
