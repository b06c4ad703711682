import { z } from "zod";
import { CHILD, type TableSpec } from "./spec";

export const SIGNS: TableSpec = {
  name: "Signs",
  synonyms: ["Sign", "Warning signs"],
  columns: [
    CHILD,
    {
      key: "date",
      heading: "Date",
      synonyms: ["Date seen", "Seen on", "Visit date", "Date of visit"],
      kind: "date",
      required: true,
      strict: true,
      blank: "date-blank",
    },
    {
      key: "sign",
      heading: "Sign",
      synonyms: ["Warning sign"],
      kind: "text",
      required: true,
      strict: true,
      blank: "cell-blank",
    },
    {
      key: "seen",
      heading: "Seen",
      synonyms: ["Sign seen", "Present"],
      kind: "word",
      required: true,
      strict: true,
      blank: "cell-blank",
      words: {
        present: ["seen", "yes", "y"],
        absent: ["not seen", "no", "n"],
        "not looked for": ["not checked", "not asked", "not looked"],
      },
      unknownWord: "seen-unknown",
    },
    {
      key: "action",
      heading: "Action",
      synonyms: ["Action date", "Follow up", "Follow up date", "Date of follow up"],
      kind: "date",
    },
  ],
};

export const signRow = z.object({
  child: z.string().min(1),
  date: z.number().int(),
  sign: z.string().min(1),
  seen: z.enum(["present", "absent", "not looked for"]),
  action: z.number().int().nullable(),
});

export type SignRow = z.infer<typeof signRow>;
