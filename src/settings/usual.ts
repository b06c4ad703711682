import { USUAL_EDGES } from "../age/bands";
import type { Settings } from "./shape";

/** Every setting where nothing is said. `asOf` has no usual value: no figure depends on the day it is made. */
export const usualSettings: Settings = {
  asOf: null,
  from: null,
  enteredBy: null,
  correction: { belowDays: 259, untilMonths: 24, untilAge: "chronological" },
  edges: USUAL_EDGES,
  recheckDays: 90,
  level: 0.95,
  by: [],
  minimumCell: 11,
  floor: 5,
  releaseMethod: "hide",
  wholeGroups: "flag",
  scanMonths: 24,
  gestationDecimals: null,
  metDates: "seen",
  seed: 20_240_229,
  monthFirst: null,
};
