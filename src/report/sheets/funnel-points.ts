import { funnelLimit } from "../../statistics/poisson";
import type { SeriesLook } from "../../workbook/series-looks";
import type { SeriesPoint } from "./point-series";

export interface FunnelLine {
  readonly name: string;
  readonly look: SeriesLook;
  readonly points: readonly SeriesPoint[];
}

const LINES = [
  { name: "95%, lower", share: 0.025, look: "dashed" },
  { name: "95%, upper", share: 0.975, look: "dashed" },
  { name: "99.8%, lower", share: 0.001, look: "dottedLine" },
  { name: "99.8%, upper", share: 0.999, look: "dottedLine" },
] as const;

/** Where the exact limits of a ratio lie for every expected number up to `mostExpected`; broken where they are above `highest`. */
export function funnelPoints(mostExpected: number, highest: number): FunnelLine[] {
  const expected = Array.from({ length: STEPS }, (_, step) => ((step + 1) * mostExpected) / STEPS);
  return LINES.map(({ name, share, look }) => {
    const points = expected.map((each): SeriesPoint => {
      const ratio = funnelLimit(each, share) as number;
      return ratio > highest ? null : [each, ratio];
    });
    const first = points.findIndex((point) => point !== null);
    return { name, look, points: first < 0 ? [[mostExpected, null]] : points.slice(first) };
  });
}

const STEPS = 120;
