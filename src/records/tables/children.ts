import { z } from "zod";
import { CHILD, type TableSpec } from "./spec";

export const CHILDREN: TableSpec = {
  name: "Children",
  synonyms: ["Child", "Child list", "Children list", "Enrolments", "Enrollments", "Niños"],
  columns: [
    { ...CHILD, synonyms: [...CHILD.synonyms, "Id", "Code"] },
    {
      key: "birth",
      heading: "Birth date",
      synonyms: ["Fecha de nacimiento", "Nacimiento", "Date of birth", "DOB", "Born", "Born on", "Birthday", "Birth"],
      kind: "date",
      required: true,
      strict: true,
    },
    {
      key: "gestation",
      heading: "Gestation",
      synonyms: [
        "Semanas de gestación",
        "Gestación",
        "Edad gestacional",
        "Gestational age",
        "GA",
        "GA at birth",
        "Gestation at birth",
        "Gestational age at birth",
      ].concat(["Weeks gestation", "Weeks of gestation", "Gestational weeks", "Gestation weeks"]),
      kind: "gestation",
    },
    {
      key: "dueDate",
      heading: "Due date",
      synonyms: [
        "EDD",
        "EDC",
        "Expected date of delivery",
        "Estimated date of delivery",
        "Expected date of confinement",
      ].concat(["Estimated due date", "Expected due date", "Baby due", "Fecha probable de parto", "FPP"]),
      kind: "date",
    },
    {
      key: "weeksEarly",
      heading: "Weeks early",
      synonyms: [
        "Weeks premature",
        "Weeks preterm",
        "Weeks prem",
        "Wks early",
        "Wks premature",
        "Semanas de prematuridad",
      ],
      kind: "weeks",
    },
    {
      key: "site",
      heading: "Site",
      synonyms: [
        "Clinic",
        "Sede",
        "Sitio",
        "Centro",
        "Clínica",
        "Location",
        "Centre",
        "Center",
        "Program site",
        "Office",
      ],
      kind: "text",
    },
    {
      key: "therapist",
      heading: "Therapist",
      synonyms: [
        "Staff member",
        "Service provider",
        "Terapeuta",
        "Therapist code",
        "Primary therapist",
        "Provider",
        "Staff",
      ],
      kind: "text",
    },
    {
      key: "enrolled",
      heading: "Enrolled",
      synonyms: [
        "Intake",
        "Intake date",
        "Date of intake",
        "Started",
        "Fecha de ingreso",
        "Ingreso",
        "Inscripción",
        "Fecha de inscripción",
        "Enrolled on",
        "Date enrolled",
        "Enrolment",
        "Enrollment",
        "Enrolment date",
        "Enrollment date",
      ].concat(["Start", "Start date"]),
      kind: "date",
      strict: true,
    },
    {
      key: "left",
      heading: "Left",
      synonyms: [
        "Exit",
        "Exit on",
        "Date of exit",
        "Discharge",
        "Date of discharge",
        "End",
        "Ended",
        "Salida",
        "Fecha de salida",
        "Egreso",
        "Fecha de egreso",
        "Baja",
        "Left on",
        "Date left",
        "Exited",
        "Exit date",
        "End date",
        "Discharged",
        "Discharge date",
      ],
      kind: "date",
      strict: true,
    },
    {
      key: "family",
      heading: "Family",
      synonyms: ["Familia", "Family code", "Family id", "Household", "Siblings"],
      kind: "text",
    },
  ],
};

const day = z.number().int().nullable();

/** A gestation as it was typed; its notation can only be judged with the whole column. */
const gestationCell = z.object({ cell: z.union([z.string(), z.number(), z.null()]), isDate: z.boolean() });

export type GestationCell = z.infer<typeof gestationCell>;

/** A row of Children after its cells are read. Rows are judged together later: one child may have several. */
export const childRow = z.object({
  child: z.string().min(1),
  birth: day,
  gestation: gestationCell,
  dueDate: day,
  weeksEarly: gestationCell,
  site: z.string(),
  therapist: z.string(),
  enrolled: day,
  left: day,
  family: z.string(),
});

export type ChildRow = z.infer<typeof childRow>;
