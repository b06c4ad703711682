import { invalidArgument } from "../protocol/rich-error";
import type { ScalarProperty } from "../protocol/server-type";

export type Check = (value: unknown) => boolean;

export const isColour: Check = (value) => typeof value === "string" && /^#[0-9A-F]{6}$/i.test(value);
export const isNumber: Check = (value) => typeof value === "number" && Number.isFinite(value);
export const isText: Check = (value) => typeof value === "string";
export const isBoolean: Check = (value) => typeof value === "boolean";
export const between =
  (least: number, most: number): Check =>
  (value) =>
    typeof value === "number" && value >= least && value <= most;
export const oneOf =
  (...values: readonly string[]): Check =>
  (value) =>
    typeof value === "string" && values.includes(value);

/** Properties that are only kept: each with the values Excel would take, refused otherwise. */
export function keptProperties<T>(
  type: string,
  checks: Readonly<Record<string, Check>>,
  keep: (target: T, property: string, value: unknown) => void,
): Record<string, ScalarProperty> {
  return Object.fromEntries(
    Object.entries(checks).map(([property, isFit]) => [
      property,
      {
        set: (target: unknown, value: unknown) => {
          if (!isFit(value)) throw invalidArgument(`${type}.${property}`);
          keep(target as T, property, value);
        },
      },
    ]),
  );
}
