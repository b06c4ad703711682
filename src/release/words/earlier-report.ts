import { z } from "zod";

/** What is read of an earlier REPORT.json: a file like any other, believed in nothing. */
const LONGEST = 20_000;
const MOST_ROWS = 200_000;

const value = z.union([z.string().max(LONGEST), z.number(), z.boolean(), z.null()]);
const setting = z.union([value, z.array(z.union([z.string().max(LONGEST), z.number()])).max(1000)]);

const schema = z.object({
  tool: z.object({ name: z.literal("Windowline"), version: z.string().max(50) }),
  settings: z.record(z.string().max(100), setting),
  tables: z
    .array(
      z.object({
        id: z.string().max(100),
        population: z.string().max(LONGEST),
        columns: z.array(z.object({ key: z.string().max(LONGEST), label: z.string().max(LONGEST) })).max(1000),
        rows: z.array(z.array(value).max(1000)).max(MOST_ROWS),
      }),
    )
    .max(100),
});

export type EarlierReport = z.infer<typeof schema>;
export type EarlierTable = EarlierReport["tables"][number];

const MOST_CHARACTERS = 200_000_000;

/** One sentence where it is no report of ours. */
export function parseEarlier(text: string): { readonly earlier: EarlierReport } | { readonly message: string } {
  const parsed = text.length > MOST_CHARACTERS ? null : schema.safeParse(jsonOf(text));
  if (parsed?.success) return { earlier: parsed.data };
  return {
    message:
      "The earlier report cannot be read: name a JSON file that windowline report wrote with --json, or leave --earlier out; nothing was written.",
  };
}

function jsonOf(text: string): unknown {
  try {
    return JSON.parse(text.replace(/^\uFEFF/, ""));
  } catch {
    return null;
  }
}
