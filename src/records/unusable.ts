import type { Finding } from "./findings/finding";
import type { TableUse } from "./records";
import type { TableName } from "./tables/spec";

/** A table that is needed is missing, or none of its rows can be used: there is nothing to compute from. */
export class RecordsUnusable extends Error {
  override readonly name = "RecordsUnusable";

  constructor(
    readonly table: TableName,
    message: string,
    /** What was found before reading stopped. */
    readonly findings: readonly Finding[] = [],
    readonly input: readonly TableUse[] = [],
  ) {
    super(message);
  }
}
