import type { AxisOut } from "../../../src/workbook/sheets";

/** Title and number format of an axis. */
export function numberAxis({ title, format }: AxisOut): { readonly title: string | null; readonly format: string } {
  return { title: title || null, format: isShare(format) ? ".0%" : "~g" };
}

export function isShare(format: AxisOut["format"]): boolean {
  return format === "wholeShare" || format === "share";
}

/** Marks at every step from the first to the last; undefined leaves them to the drawing. */
export function axisTicks({ step }: AxisOut, [low, high]: readonly [number, number]): number[] | undefined {
  if (step === undefined) return undefined;
  const count = Math.floor((high - low) / step + 1e-9) + 1;
  return Array.from({ length: count }, (_, at) => Number((low + at * step).toFixed(6)));
}
