import { Ref } from "./server-type";
import { invalidArgument } from "./rich-error";

export function textArgument(value: unknown, location: string): string {
  if (typeof value !== "string") throw invalidArgument(location);
  return value;
}

export function countArgument(value: unknown, location: string): number {
  if (typeof value !== "number" || !Number.isInteger(value) || value < 0) throw invalidArgument(location);
  return value;
}

export function numberArgument(value: unknown, location: string): number {
  if (typeof value !== "number" || !Number.isFinite(value)) throw invalidArgument(location);
  return value;
}

export function booleanArgument(value: unknown, location: string): boolean {
  if (typeof value !== "boolean") throw invalidArgument(location);
  return value;
}

/** The object that an argument points to, of the type named. */
export function objectArgument<T>(value: unknown, type: string, location: string): T {
  if (!(value instanceof Ref) || value.type.name !== type) throw invalidArgument(location);
  return value.target as T;
}
