import type { RESULT } from "../records";
import { CHILD, type TableSpec } from "./spec";

/** The ways in which a result may be written, through case, spaces, hyphens and full stops. */
export const RESULT_WORDS: Readonly<Record<keyof typeof RESULT, readonly string[]>> = {
  met: ["met", "achieved", "attained", "reached", "mastered", "yes", "y"].concat(
    ["✓", "✔", "☑", "✅", "√"],
    ["logrado", "lograda", "sí", "si"],
  ),
  emerging: ["emerging", "partly", "partly met", "partial", "sometimes", "in progress", "developing"].concat([
    "en proceso",
    "a veces",
  ]),
  notMet: ["not met", "not yet", "not yet met", "unmet", "not achieved", "not attained", "no", "n"].concat([
    "no logrado",
    "no lograda",
    "todavía no",
    "todavia no",
    "aún no",
    "aun no",
  ]),
  lost: ["lost", "loss", "skill lost", "lost skill", "perdido", "perdida", "pérdida"],
};

/** Observations are read column by column, so that a million rows are one pass: no schema a row. */
export const OBSERVATIONS: TableSpec = {
  name: "Observations",
  synonyms: ["Observation", "Skill observations", "Looks", "Checks", "Skill checks", "Observaciones"],
  columns: [
    CHILD,
    {
      key: "skill",
      heading: "Skill",
      synonyms: ["Skill id", "Skill code", "Milestone", "Habilidad", "Destreza", "Hito"],
      kind: "id",
      required: true,
    },
    {
      key: "date",
      heading: "Date",
      synonyms: [
        "Date seen",
        "Seen on",
        "Visit date",
        "Date of visit",
        "Observation date",
        "Date observed",
        "Observed on",
        "Date checked",
        "Checked on",
        "Visit",
        "Fecha",
        "Fecha de visita",
      ],
      kind: "date",
      required: true,
    },
    {
      key: "result",
      heading: "Result",
      synonyms: ["Results", "Status", "Resultado", "Resultados"],
      kind: "word",
      required: true,
    },
    {
      key: "observer",
      heading: "Observer",
      synonyms: ["Observador", "Observadora", "Observed by", "Seen by", "Observer code", "Rater"],
      kind: "id",
    },
    {
      key: "entered",
      heading: "Entered",
      synonyms: ["Date entered", "Entered on", "Entry date", "Typed in", "Date typed"],
      kind: "date",
    },
  ],
};

/** The columns of a grid that are not skills. */
export const GRID: TableSpec = {
  ...OBSERVATIONS,
  columns: OBSERVATIONS.columns
    .filter((column) => column.key === "child" || column.key === "date")
    .map(({ required: _, ...column }) => (column.key === "child" ? { ...column, required: true } : column)),
};
