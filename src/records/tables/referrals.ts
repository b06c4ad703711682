import { z } from "zod";
import { CHILD, type ColumnSpec, type TableSpec, YES_NO } from "./spec";

const step = (key: string, heading: string, synonyms: readonly string[]): ColumnSpec => ({
  key,
  heading,
  synonyms,
  kind: "date",
});

export const REFERRALS: TableSpec = {
  name: "Referrals",
  synonyms: ["Referral", "Referral list", "Remisiones"],
  columns: [
    CHILD,
    {
      key: "referred",
      heading: "Referred",
      synonyms: [
        "Referred on",
        "Referral date",
        "Date referred",
        "Date of referral",
        "Remisión",
        "Fecha de remisión",
      ].concat(["Sent", "Sent on", "Date sent"]),
      kind: "date",
      required: true,
      strict: true,
      blank: "date-blank",
    },
    {
      key: "area",
      heading: "Area",
      synonyms: ["Areas", "Domain", "Domains", "Dominio"],
      kind: "text",
      required: true,
      strict: true,
      blank: "cell-blank",
    },
    {
      key: "reason",
      heading: "Reason",
      synonyms: ["Referral reason", "Reason for referral", "Why", "Why referred"],
      kind: "text",
    },
    {
      key: "from",
      heading: "From",
      synonyms: [
        "Source",
        "Referral source",
        "Referred by",
        "Referred from",
        "Sent by",
        "Who referred",
        "From whom",
        "Origen",
      ],
      kind: "text",
    },
    {
      key: "to",
      heading: "To",
      synonyms: ["Referred to", "Destination", "Sent to", "To whom", "Who to", "Where to"],
      kind: "text",
    },
    step("received", "Received", [
      "Received on",
      "Date received",
      "Heard back",
      "Heard back on",
      "Date heard back",
      "Recibido",
    ]),
    step(
      "evaluated",
      "Evaluated",
      ["Evaluated on", "Evaluation date", "Date evaluated", "Fecha de evaluación"].concat([
        "Eval",
        "Eval date",
        "Date of eval",
        "Evaluation",
      ]),
    ),
    { key: "eligible", heading: "Eligible", synonyms: ["Found eligible"], kind: "word", words: YES_NO },
    step("plan", "Plan", ["Plan date", "Fecha del plan", "Date of plan", "Plan signed", "IFSP", "IFSP date"]),
    {
      key: "lateReason",
      heading: "Late reason",
      synonyms: ["Reason late", "Reason for delay", "Delay reason"],
      kind: "word",
      words: { family: ["families", "family reason"], program: ["programme", "program reason"] },
    },
    step("closed", "Closed", ["Closed on", "Date closed"]),
  ],
};

const day = z.number().int().nullable();

export const referralRow = z.object({
  child: z.string().min(1),
  referred: z.number().int(),
  area: z.string().min(1),
  reason: z.string(),
  from: z.string(),
  to: z.string(),
  received: day,
  evaluated: day,
  eligible: z.enum(["yes", "no"]).nullable(),
  plan: day,
  lateReason: z.enum(["family", "program"]).nullable(),
  closed: day,
});

export type ReferralRow = z.infer<typeof referralRow>;
