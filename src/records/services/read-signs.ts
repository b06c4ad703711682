import type { Counted } from "../headings/count-blocks";
import { NO_DAY, type Signs } from "../records";
import { dateRefusal, laterStep, readServiceRows, type ServiceContext } from "./service-rows";
import { signRow, SIGNS } from "../tables/signs";

/** Reads Signs: an action dated before the sign, or after the as-of date, stands as not taken. */
export function readSigns(context: ServiceContext, blocks: readonly Counted[]): Signs {
  const rows = readServiceRows(context, blocks, SIGNS, signRow, (row) =>
    dateRefusal(context, row, row.value.date, "date"),
  );
  for (const row of rows) {
    if (!context.stays.covers(row.child, row.value.date)) row.remark("outside-enrolment", "date");
  }
  return {
    child: Int32Array.from(rows, (row) => row.child),
    day: Int32Array.from(rows, (row) => row.value.date),
    sign: rows.map((row) => row.value.sign),
    seen: rows.map((row) => row.value.seen),
    action: Int32Array.from(
      rows,
      (row) => laterStep(context, row, row.value.date, row.value.action, "action") ?? NO_DAY,
    ),
  };
}
