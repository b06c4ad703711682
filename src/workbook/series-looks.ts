import { INK } from "./ink";

/** What each look draws with. Every host draws from this one table, as far as its charts can. */
interface Fill {
  readonly kind: "fill";
  readonly ink: keyof typeof INK;
  /** Where a host draws no patterns: a color as light as the pattern seems, so that a grey print still tells fills apart. */
  readonly plain: string;
  readonly pattern?: "stripes" | "lines" | "diamonds";
}

export interface Line {
  readonly ink: keyof typeof INK;
  readonly points: number;
  readonly dash: "solid" | "dash" | "dots" | "dashDot";
}

export interface Mark {
  readonly shape: "diamond" | "circle" | "square" | "triangle" | "dash";
  /** Points. */
  readonly size: number;
  readonly ink: keyof typeof INK;
}

interface Drawn {
  /** `band` is a hatched breadth, drawn where a host has no such thing as a thin line. */
  readonly kind: "line" | "marks" | "band";
  readonly line?: Line;
  readonly mark?: Mark;
}

const ACCENT: Line = { ink: "accent", points: 2.25, dash: "solid" };
const DASHED: Line = { ink: "text", points: 1.75, dash: "dash" };
const DOTTED: Line = { ink: "quiet", points: 1.75, dash: "dots" };
const LONG_DASHED: Line = { ink: "text", points: 1.75, dash: "dashDot" };

/**
 * Looks that stay apart on a grey print: fills and lines differ in pattern before they differ in color. `clear` is not
 * drawn and lifts what is stacked on it. `joined` and its kind are lines with a mark at every value. A light mark is
 * filled, not hollow: LibreOffice draws no outline, so that a hollow one would not be seen.
 */
const LOOKS = {
  solid: { kind: "fill", ink: "accent", plain: INK.accent },
  striped: { kind: "fill", ink: "accent", plain: "#8FB4C6", pattern: "stripes" },
  hollow: { kind: "fill", ink: "paper", plain: INK.paper },
  lined: { kind: "fill", ink: "quiet", plain: "#7A7A7A", pattern: "lines" },
  crossed: { kind: "fill", ink: "text", plain: INK.text, pattern: "diamonds" },
  pale: { kind: "fill", ink: "pale", plain: INK.pale },
  clear: { kind: "clear" },
  line: { kind: "line", line: ACCENT },
  dashed: { kind: "line", line: DASHED },
  dottedLine: { kind: "line", line: DOTTED },
  longDashed: { kind: "line", line: LONG_DASHED },
  edge: { kind: "line", line: { ink: "quiet", points: 1, dash: "dash" } },
  joined: { kind: "line", line: ACCENT, mark: { shape: "circle", size: 6, ink: "accent" } },
  joinedDashed: { kind: "line", line: DASHED, mark: { shape: "square", size: 6, ink: "text" } },
  joinedDotted: { kind: "line", line: DOTTED, mark: { shape: "triangle", size: 7, ink: "quiet" } },
  joinedLongDashed: { kind: "line", line: LONG_DASHED, mark: { shape: "diamond", size: 7, ink: "text" } },
  point: { kind: "marks", mark: { shape: "diamond", size: 9, ink: "text" } },
  lightPoint: { kind: "marks", mark: { shape: "circle", size: 7, ink: "light" } },
  tick: { kind: "marks", mark: { shape: "dash", size: 9, ink: "text" } },
  band: { kind: "band", line: { ink: "hatch", points: 0.75, dash: "solid" } },
} satisfies Readonly<Record<string, Fill | Drawn | { readonly kind: "clear" }>>;

export type SeriesLook = keyof typeof LOOKS;

export const SERIES_LOOKS: Readonly<Record<SeriesLook, Fill | Drawn | { readonly kind: "clear" }>> = LOOKS;

/** True where the look fills a bar, and does not draw a line or marks. */
export function isFill(look: SeriesLook): boolean {
  const { kind } = SERIES_LOOKS[look];
  return kind === "fill" || kind === "clear";
}

/** Null where the look joins nothing. */
export function lineOf(look: SeriesLook): Line | null {
  const drawn = SERIES_LOOKS[look];
  return ("line" in drawn && drawn.line) || null;
}

/** Null where the look has no marks. */
export function markOf(look: SeriesLook): Mark | null {
  const drawn = SERIES_LOOKS[look];
  return ("mark" in drawn && drawn.mark) || null;
}
