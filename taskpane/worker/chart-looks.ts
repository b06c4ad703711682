import type { SeriesLook } from "../../src/workbook/sheets";
import type { LegendEntry } from "./made";

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
  dashed: { colour: CHART_INK.text, width: 2, dash: [7, 4] },
  dottedLine: { colour: CHART_INK.quiet, width: 2, dash: [2, 3] },
  longDashed: { colour: CHART_INK.text, width: 2, dash: [10, 3, 2, 3] },
  edge: { colour: CHART_INK.quiet, width: 1, dash: [4, 3] },
};

export function lineOf(look: SeriesLook): LineLook {
  return LINES[look] ?? { colour: CHART_INK.text, width: 2, dash: [1, 0] };
}

export function legendEntry(name: string, look: SeriesLook, lines: boolean): LegendEntry {
  if (look === "point") return { name, shape: "point", paint: CHART_INK.text, dash: "" };
  if (look === "band") return { name, shape: "fill", paint: CHART_INK.pale, dash: "" };
  if (!lines) return { name, shape: "fill", paint: fillOf(look), dash: "" };
  const { colour, dash } = lineOf(look);
  return { name, shape: "line", paint: colour, dash: dash.join(" ") };
}
