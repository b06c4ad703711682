/** What the page shows: one of these at a time. */
export type PageState =
  | { readonly at: "loading"; readonly step: string }
  | { readonly at: "ready"; readonly name: string; readonly isSample: boolean; readonly isEmpty: boolean }
  | { readonly at: "failed"; readonly message: string };

/** A line of words at the foot of the page, for what just happened. */
export interface Notice {
  readonly kind: "done" | "problem";
  readonly text: string;
}

/** Asked before another workbook takes the place of one with something unsaved. */
export interface Question {
  readonly text: string;
  readonly goOn: () => void;
  readonly stay: () => void;
}
