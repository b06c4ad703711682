import { z } from "zod";
import { CHILD, type TableSpec, YES_NO } from "./spec";

export const RATINGS: TableSpec = {
  name: "Ratings",
  synonyms: ["Rating", "Outcome ratings"],
  columns: [
    CHILD,
    {
      key: "outcome",
      heading: "Outcome",
      synonyms: ["Outcome area", "Child outcome"],
      kind: "text",
      required: true,
      strict: true,
      blank: "cell-blank",
    },
    {
      key: "entryDate",
      heading: "Entry date",
      synonyms: ["Entry level date", "Entry rating date", "Date of entry rating"],
      kind: "date",
    },
    {
      key: "entryRating",
      heading: "Entry level",
      synonyms: ["Entry rating", "Entry"],
      kind: "number",
      required: true,
      strict: true,
    },
    {
      key: "exitDate",
      heading: "Exit date",
      synonyms: ["Exit level date", "Exit rating date", "Date of exit rating"],
      kind: "date",
    },
    {
      key: "exitRating",
      heading: "Exit level",
      synonyms: ["Exit rating", "Exit"],
      kind: "number",
      required: true,
      strict: true,
    },
    {
      key: "newSinceEntry",
      heading: "Gained any skill",
      synonyms: ["New since entry", "New skills since entry", "New skill since entry"],
      kind: "word",
      words: YES_NO,
    },
  ],
};

const day = z.number().int().nullable();

/** @param levels - the highest level of the program's scale */
export function ratingRowOf(levels: number) {
  const level = z.number().int("rating-illegal").min(0, "rating-illegal").max(levels, "rating-illegal").nullable();
  return z
    .object({
      child: z.string().min(1),
      outcome: z.string().min(1),
      entryDate: day,
      entryRating: level,
      exitDate: day,
      exitRating: level,
      newSinceEntry: z.enum(["yes", "no"]).nullable(),
    })
    .superRefine((row, context) => {
      if (row.entryDate === null || row.exitDate === null || row.exitDate >= row.entryDate) return;
      context.addIssue({ code: "custom", path: ["exitDate"], message: "exit-before-entry" });
    });
}

export type RatingRow = z.infer<ReturnType<typeof ratingRowOf>>;
