import type { Decision, Repair } from "../../src/records/corrections/decisions";

/** What a decision says. It names ids, since whoever made it must know it again; it is shown in the pane alone. */
export function decisionInWords(each: Decision): string {
  switch (each.kind) {
    case "same-child":
      return `Rows under “${each.alias}” count as rows of child “${each.child}”.`;
    case "skill-alias":
      return `“${each.alias}” is read as the skill “${each.skill}”.`;
    case "date-order":
      return `Text dates of ${each.table}, ${each.column}, are read ${each.order}.`;
    case "heading":
      return `In ${each.table}, the heading “${each.heading}” means ${each.means}.`;
    case "two-digit-years":
      return `Years of two digits are ${each.means === "leave out" ? "left out" : `read as ${each.means}`}.`;
    case "sheet":
      return `The sheet “${each.sheet}” is read as ${each.is}.`;
    case "word":
      return `“${each.word}” among results is read as ${each.means ?? "not settled yet"}.`;
    case "area":
      return `“${each.word}” among areas is read as ${each.means ?? "not settled yet"}.`;
    case "name":
      return `“${each.spelling}” in ${each.column} is read as “${each.means}”.`;
    case "skill":
      return `“${each.skill}” is a skill.`;
  }
}

/** What a person may settle by hand. */
export type CorrectionKind = Exclude<Repair["kind"], "two-digit-years">;

export const KINDS: readonly { readonly kind: CorrectionKind; readonly label: string }[] = [
  { kind: "skill-alias", label: "A skill is written another way" },
  { kind: "same-child", label: "Two ids are one child" },
  { kind: "date-order", label: "The order of day and month in a column" },
  { kind: "heading", label: "What a heading means" },
];

export const ORDERS = ["day first", "month first", "year first"] as const;

export const CORRECTIONS_ABOUT =
  "A correction settles how something is read. Your cells stay as they are. It is used for the next quarter too, until you revoke it.";

export const CORRECTIONS_FILE_ABOUT =
  "Settings, the way the workbook is read, and corrections go into one file. Open it with next quarter’s workbook, or give it to the command line.";

export function decisionsUnread(why: string): string {
  return `The corrections kept with this workbook could not be read, so none is shown here. None of them is lost. ${why}`;
}
