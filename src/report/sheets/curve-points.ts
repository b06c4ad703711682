import type { AgeCurve } from "../report";

export type Point = readonly [months: number, share: number];

/** The cumulative curve as corners to be joined by straight lines: mass is spread evenly within each interval. */
export function curvePoints({ steps }: AgeCurve): Point[] {
  const points: Point[] = [];
  let share = 0;
  for (const { fromMonths, toMonths, shareTo } of steps) {
    points.push([fromMonths, share], [toMonths, shareTo]);
    share = shareTo;
  }
  return points;
}

/**
 * A hatched breadth from one age to another: a thin line drawn up and down. Hatched, not filled, since programs do not
 * agree on which series they draw on top.
 */
export function bandPoints(fromMonths: number, toMonths: number, axisMonths: number): Point[] {
  const strokes = Math.max(2, Math.ceil(((toMonths - fromMonths) / axisMonths) * STROKES_ACROSS));
  return Array.from({ length: strokes + 1 }, (_, stroke): readonly Point[] => {
    const months = fromMonths + ((toMonths - fromMonths) * stroke) / strokes;
    return stroke % 2 === 0
      ? [
          [months, 0],
          [months, 1],
        ]
      : [
          [months, 1],
          [months, 0],
        ];
  }).flat();
}

/** Strokes over the whole axis: some five pixels apart in a chart of 300. */
const STROKES_ACROSS = 54;
