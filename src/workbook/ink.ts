/** Ink on paper and one accent. Every text color is at 4.5 to 1 or more on white and on `tint` (WCAG 2.2, 1.4.3). */
export const INK = {
  text: "#1A1A1A",
  quiet: "#505050",
  accent: "#0B4F6C",
  tint: "#EEF2F5",
  pale: "#D5DDE3",
  hatch: "#C3CED6",
  /** For marks lighter than the others: 3 to 1 on white, as marks need (WCAG 2.2, 1.4.11). */
  light: "#8A949B",
  rule: "#D9D9D9",
  paper: "#FFFFFF",
  /** Steps of shading that a grey print keeps apart; text on the darkest has 6 to 1. */
  step1: "#E3EAEF",
  step2: "#B9CBD6",
  step3: "#86A5B6",
} as const;
