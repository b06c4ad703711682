import type { ReleaseRule } from "../prepared";

/** The rule in one sentence: every output carries it. */
export function ruleInWords({ minimumCell, method, base, mostOff }: ReleaseRule): string {
  const small = minimumCell <= 2 ? "no count of 1" : `no count of 1 to ${minimumCell - 1}`;
  const prepared = `Prepared under the rule of at least ${minimumCell}: ${small} is shown or can be worked out from what is shown here`;
  if (method === "hide") return `${prepared}.`;
  if (method === "ranges") return `${prepared}; each count is given as a range that it lies in.`;
  const off =
    mostOff === undefined
      ? ""
      : ` Each count may be off by up to ${mostOff}, so no percent of fewer than 200 is given.`;
  return `${prepared}; counts are rounded to multiples of ${base ?? minimumCell} that still add up.${off}`;
}

/** What the one symbol says, and what it does not. */
export function symbolInWords({ minimumCell }: ReleaseRule): string {
  const most = minimumCell - 1;
  return `"*" means held back. Some of these counts are small (1 to ${most}). Others are held back only because a small one could be worked out from them. The release does not say which, and a "*" does not mean few, rare or bad. An empty cell is not held back: the row has no such figure, or too few children are behind an estimate.`;
}

/** The tool prepares; people decide. */
export const DECISION =
  "People decide whether these figures may be passed on: 45 CFR 164.514 and 34 CFR 99.31(b) leave that to them. Windowline says under which rule the figures were prepared. It does not say that they are de-identified under any law.";

export const NOT_A_DIAGNOSIS =
  "These figures describe a program, not a diagnosis; for any child, talk with the child's clinician. Local rules and licensed practice decide.";
