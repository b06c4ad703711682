import { BOX, BOX_COUNT, BOX_LABELS } from "../../cohort/boxes";
import { LOSS } from "./builder";

/** The counts of one row of a table by age band: its boxes, what the table adds up, and what an outsider can. */
export interface BoxColumn {
  /** As keys, and where a table has it the table, name it. */
  readonly key: string;
  readonly words: string;
  readonly printed: boolean;
  readonly loss: { readonly skill: number; readonly area: number };
  /** Boxes that it is made of. */
  readonly boxes: readonly number[];
}

const BOX_KEYS = ["hadAtFirstLook", "gained", "notMet", "outOfDate", "lost", "notAssessed"] as const;
const BOX_LOSS = { skill: LOSS.box, area: LOSS.box };
const FIGURE_LOSS = { skill: LOSS.figure, area: LOSS.areaFigure };
const MET = [BOX.hadAtFirstLook, BOX.gained];
const WITHOUT = [BOX.notMet, BOX.lost];
const UNKNOWN = [BOX.outOfDate, BOX.notAssessed];

export const BOX_COLUMNS: readonly BoxColumn[] = [
  ...BOX_KEYS.map((key, box) => ({ key, words: BOX_LABELS[box]!, printed: true, loss: BOX_LOSS, boxes: [box] })),
  { key: "assessed", words: "assessed", printed: true, loss: FIGURE_LOSS, boxes: [...MET, ...WITHOUT] },
  { key: "met", words: "met", printed: true, loss: FIGURE_LOSS, boxes: MET },
  { key: "without", words: "assessed less met", printed: false, loss: BOX_LOSS, boxes: WITHOUT },
  { key: "unknown", words: "children less assessed", printed: false, loss: BOX_LOSS, boxes: UNKNOWN },
  { key: "notYet", words: "children less met", printed: false, loss: BOX_LOSS, boxes: [...WITHOUT, ...UNKNOWN] },
  { key: "possible", words: "met, or perhaps met", printed: false, loss: BOX_LOSS, boxes: [...MET, ...UNKNOWN] },
  {
    key: "children",
    words: "children",
    printed: true,
    loss: { skill: LOSS.children, area: LOSS.areaFigure },
    boxes: Array.from({ length: BOX_COUNT }, (_, box) => box),
  },
];

/** Position of each column by its key. */
export const AT = Object.fromEntries(BOX_COLUMNS.map(({ key }, at) => [key, at])) as Readonly<
  Record<
    (typeof BOX_KEYS)[number] | "assessed" | "met" | "without" | "unknown" | "notYet" | "possible" | "children",
    number
  >
>;

/** The columns that hold a child in each box. */
export const COLUMNS_OF_BOX: readonly (readonly number[])[] = BOX_LABELS.map((_, box) =>
  BOX_COLUMNS.flatMap(({ boxes }, at) => (boxes.includes(box) ? [at] : [])),
);

/** What one row adds up to, whole first. */
export const ROW_SUMS: readonly (readonly [whole: number, parts: readonly number[]])[] = [
  [AT.met, [AT.hadAtFirstLook, AT.gained]],
  [AT.without, [AT.notMet, AT.lost]],
  [AT.unknown, [AT.outOfDate, AT.notAssessed]],
  [AT.assessed, [AT.met, AT.without]],
  [AT.children, [AT.assessed, AT.unknown]],
  [AT.notYet, [AT.without, AT.unknown]],
  [AT.possible, [AT.met, AT.unknown]],
];
