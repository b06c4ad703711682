import { LOSS } from "./builder";
import { atAge, spanText } from "./keys";

/** The counts of one skill at one edge: what the table prints, and what an outsider can work out from it. */
export interface EdgeColumn {
  /** As keys name it, and where a table has it the table. */
  readonly column: string;
  readonly words: string;
  readonly printed: boolean;
  readonly loss: number;
  /** Ages as keys name them; null where there is no such count at this edge. */
  readonly agesOf: (edges: readonly number[], edge: number) => string | null;
}

const until = (edges: readonly number[], edge: number) => spanText(null, edges[edge] as number);
const from = (edges: readonly number[], edge: number) => spanText(edges[edge] as number, null);
const at = (edges: readonly number[], edge: number) => atAge(edges[edge] as number);
const upToNext = (edges: readonly number[], edge: number) =>
  edge + 1 < edges.length ? spanText(edges[edge] as number, edges[edge + 1] as number) : null;

export const EDGE_COLUMNS: readonly EdgeColumn[] = [
  { column: "met", words: "met by then", printed: true, loss: LOSS.figure, agesOf: until },
  { column: "notMet", words: "not met by then", printed: true, loss: LOSS.box, agesOf: from },
  { column: "notKnown", words: "not known", printed: true, loss: LOSS.box, agesOf: at },
  { column: "notYet", words: "children less met by then", printed: false, loss: LOSS.box, agesOf: at },
  { column: "possible", words: "met, or perhaps met, by then", printed: false, loss: LOSS.box, agesOf: at },
  { column: "met", words: "met between then and the next age", printed: false, loss: LOSS.box, agesOf: upToNext },
  {
    column: "notMet",
    words: "last seen without it between then and the next age",
    printed: false,
    loss: LOSS.box,
    agesOf: upToNext,
  },
];

export const EDGE = {
  met: 0,
  notMet: 1,
  notKnown: 2,
  notYet: 3,
  possible: 4,
  metBetween: 5,
  notMetBetween: 6,
} as const;
