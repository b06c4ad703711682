import { z } from "zod";
import { dayFromIso } from "../age/day";

/**
 * A ledger as a file may hold it. The file may come from anywhere, so that nothing in it is believed: lengths, whole
 * numbers, no keys beside those named.
 */
const MOST_ENTRIES = 10_000;
const MOST_CELLS = 1_000_000;
const LONGEST_TEXT = 4_000;

const text = z.string().max(LONGEST_TEXT);
const isoDay = z
  .string()
  .max(10)
  .refine((iso) => dayFromIso(iso) !== null);
/** Whole, and small enough to be exact. */
const whole = z.int();
const count = whole.min(0);

const rule = z.strictObject({
  minimumCell: whole.min(1).max(1000),
  method: z.enum(["hide", "round", "ranges"]),
  // Ranges may be several times as wide as the threshold.
  base: whole.min(1).max(100_000).nullable(),
});

const cell = z.strictObject({ key: text.min(1), place: text, shown: count.nullable(), atLeast: count.exactOptional() });

const equation = z.strictObject({
  terms: z.array(z.strictObject({ cell: count, coefficient: whole })).max(MOST_CELLS),
  equals: whole,
});

const body = z.strictObject({
  asOf: isoDay,
  from: isoDay,
  tables: z.array(text.min(1)).max(100),
  rule,
  definition: text,
  cells: z.array(cell).max(MOST_CELLS),
  equations: z.array(equation).max(MOST_CELLS),
});

export const ledgerSchema = z.strictObject({
  tool: z.literal("Windowline"),
  holds: z.literal("releases"),
  format: z.literal(1),
  about: text,
  entries: z.array(z.strictObject({ body, hash: z.string().regex(/^[0-9a-f]{64}$/) })).max(MOST_ENTRIES),
});
