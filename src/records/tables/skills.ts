import { z } from "zod";
import type { TableSpec } from "./spec";

const LAST_MONTH = 216;

export const SKILLS: TableSpec = {
  name: "Skills",
  synonyms: ["Skill", "Skill list", "Skills list", "Milestones", "Habilidades"],
  without: ["Child", "Children", "Niño", "Niña"],
  columns: [
    {
      key: "skill",
      heading: "Skill",
      synonyms: ["Skill id", "Skill code", "Milestone", "Id", "Code", "Habilidad", "Destreza", "Hito"],
      kind: "id",
      required: true,
      strict: true,
      blank: "skill-blank",
    },
    { key: "label", heading: "Label", synonyms: ["Skill label", "Skill name", "Name", "Description"], kind: "text" },
    {
      key: "area",
      heading: "Area",
      synonyms: ["Dominio", "Domain", "Developmental area", "Developmental domain"],
      kind: "text",
      required: true,
      strict: true,
      blank: "cell-blank",
    },
    {
      key: "opens",
      heading: "Opens",
      synonyms: ["Opens months", "Window opens", "Window opens months", "Opens at"],
      kind: "number",
      strict: true,
    },
    {
      key: "closes",
      heading: "Closes",
      synonyms: ["Closes months", "Window closes", "Window closes months", "Closes at"],
      kind: "number",
      required: true,
      strict: true,
    },
    {
      key: "ageBasis",
      heading: "Age basis",
      synonyms: ["Basis of age", "Age"],
      kind: "word",
      words: { corrected: ["corrected age"], chronological: ["chronological age"] },
      unknownWord: "age-basis-unknown",
      strict: true,
    },
    {
      key: "expectedShare",
      heading: "Expected share",
      synonyms: ["Share expected", "Expected"],
      kind: "number",
      strict: true,
    },
    { key: "follows", heading: "Follows", synonyms: ["Replaces", "Follows skill"], kind: "id" },
    { key: "tryTogether", heading: "Try together", synonyms: ["Try at home", "Ideas for families"], kind: "text" },
    {
      key: "sense",
      heading: "Sense",
      synonyms: ["Hearing or seeing"],
      kind: "word",
      words: { hearing: ["hears"], seeing: ["vision", "sight"] },
    },
    { key: "basis", heading: "Basis", synonyms: ["Source", "Window source", "Basis of window"], kind: "text" },
  ],
};

const months = z.number().min(0, "month-illegal").max(LAST_MONTH, "month-illegal").nullable();

/** A row of Skills after its cells are read. Every message is the id of a rule. */
export const skillRow = z
  .object({
    skill: z.string().min(1),
    label: z.string(),
    area: z.string(),
    opens: months,
    closes: months.transform((value) => (value === 0 ? null : value)),
    ageBasis: z.enum(["corrected", "chronological"]).nullable(),
    expectedShare: z
      .number()
      .min(0, "share-illegal")
      .nullable()
      .transform((value) => (value === 0 ? null : value)),
    follows: z.string().nullable(),
    tryTogether: z.string(),
    sense: z.enum(["hearing", "seeing"]).nullable(),
    basis: z.string(),
  })
  .superRefine((row, context) => {
    const refuse = (path: string, rule: string) => context.addIssue({ code: "custom", path: [path], message: rule });
    if (row.opens !== null && row.closes !== null && row.closes <= row.opens) refuse("closes", "window-empty");
    if (row.expectedShare !== null && row.expectedShare > 100) refuse("expectedShare", "share-illegal");
    else if (row.expectedShare !== null && row.expectedShare > 1) refuse("expectedShare", "share-as-percent");
  });

export type SkillRow = z.infer<typeof skillRow>;
