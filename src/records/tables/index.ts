import { CHILDREN } from "./children";
import { OBSERVATIONS } from "./observations";
import { RATINGS } from "./ratings";
import { REFERRALS } from "./referrals";
import { SIGNS } from "./signs";
import { SKILLS } from "./skills";
import type { TableName, TableSpec } from "./spec";

/** The six tables, in the order in which they are named everywhere. */
export const TABLES: readonly TableSpec[] = [CHILDREN, OBSERVATIONS, SKILLS, REFERRALS, SIGNS, RATINGS];

export function specOf(name: TableName): TableSpec {
  return TABLES.find((spec) => spec.name === name) as TableSpec;
}
