import type { SampleOptions } from "../../../src/sample/make-sample";

/** The word that must not be found anywhere but in the workbook: it is in every child's name, and in the name of the file. */
export const CANARY = "Quillfeather";

export const SAMPLES: Readonly<Record<string, SampleOptions>> = {
  small: { children: 24, seed: 5 },
  faults: { children: 40, seed: 7, defects: true },
};
