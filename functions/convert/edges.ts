import { USUAL_EDGES } from "../../src/age/bands";
import { invalid } from "../failure";
import { columnOf, type InCell, isBlank, isLeftOut } from "./cells";
import { numberFrom } from "./values";

/** Rising band edges in months. A 0 after a larger edge is an empty cell: it could be nothing else. */
export function edgesOf(argument: unknown): readonly number[] {
  if (isLeftOut(argument)) return USUAL_EDGES;
  const cells = columnOf(argument, "edges").flatMap((cell): InCell[] =>
    typeof cell === "string" ? cell.split(",") : [cell],
  );
  const edges = cells.filter((cell) => !isBlank(cell)).map((cell) => numberFrom(cell, "edges"));
  const given = edges.filter((edge, at) => edge !== 0 || !edges.slice(0, at).some((before) => before > 0));
  if (given.length === 0) throw invalid("edges is empty: give the months at which age groups begin, such as 0, 6, 12.");
  if (given.some((edge, at) => at > 0 && edge <= (given[at - 1] as number))) {
    throw invalid("edges must rise, such as 0, 6, 12.");
  }
  return given;
}
