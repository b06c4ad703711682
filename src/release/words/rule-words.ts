import type { ReleaseRule } from "../prepared";

/** The rule in one sentence: every output carries it. */
export function ruleInWords({ minimumCell, method, base }: ReleaseRule): string {
  const small = minimumCell <= 2 ? "no count of 1" : `no count of 1 to ${minimumCell - 1}`;
  const prepared = `Prepared under the rule of at least ${minimumCell}: ${small} is shown, or can be worked out from what is shown here`;
  if (method === "hide") return `${prepared}.`;
  if (method === "ranges") return `${prepared}; what is held back stands as a range that the count lies in.`;
  return `${prepared}; counts are rounded to multiples of ${base ?? minimumCell} that still add up.`;
}

/** What the one symbol says, and what it does not. */
export function symbolInWords({ minimumCell }: ReleaseRule): string {
  const most = minimumCell - 1;
  return `"*" stands for every figure that is held back. Some counts behind it are small (1 to ${most}); others are held back only because a small one could be worked out from them. Which is which is not told, and no "*" means that something is few, rare or bad. An empty cell is no "*": there the row carries no figure, or too few children stand behind an estimate.`;
}

/** The tool prepares; people decide. */
export const DECISION =
  "Whether these figures may be passed on is for people to decide: 45 CFR 164.514 and 34 CFR 99.31(b) leave that decision to them. Windowline says under which rule the figures were prepared; it does not say that they are de-identified under any law.";

export const NOT_A_DIAGNOSIS =
  "Nothing here is a diagnosis, and no figure about many children says anything about one child by itself: talk with the child's clinician; local rules and licensed practice decide.";
