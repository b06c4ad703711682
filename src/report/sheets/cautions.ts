/** Printed on the summary and on the method sheet. */
export const CAUTIONS: readonly string[] = [
  "Nothing in this workbook is a diagnosis. A window says at which ages children in its source met a skill; it says nothing about one child by itself.",
  "Local rules and licensed practice decide what is done. Talk with the child's clinician about anything that gives cause for concern, and without waiting where a skill that was there has been lost.",
  "Past a window that 75 or more in 100 children meet is nothing unusual for one child: up to one child in four is. Past a window that 99 in 100 children meet is unusual.",
  "A look tells what was seen that day. Between two visits nobody knows the day: the skill was met somewhere in between.",
  "Figures about a few children are uncertain: read the limits, and the count, before the percent.",
];
