import type { AxisOut } from "../../workbook/sheets";

const MOST_MARKS = 8;

/** An axis of counts from 0 to at least `most`, marked at whole numbers, at no more than `marks` of them. */
export function countAxis(title: string, most: number, marks = MOST_MARKS): AxisOut {
  const step = Math.max(1, Math.ceil(most / marks));
  return { title, min: 0, max: Math.max(1, Math.ceil(most / step)) * step, step, format: "number" };
}
