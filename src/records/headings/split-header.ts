import { segmentsOf } from "./header-cells";
import { type HeaderCell, type HeadingMatch, headingKeys } from "./headings";
import { bestSpec, type DecidedHeadings } from "./table-match";
import { specOf } from "../tables";
import type { TableSpec } from "../tables/spec";

/** A table by its headings; without a table where they only might be those of a wide sheet. */
export interface Found {
  readonly cells: readonly HeaderCell[];
  readonly spec: TableSpec | null;
  readonly match: HeadingMatch | null;
  readonly beside: readonly HeaderCell[];
}

type FoundTable = Omit<Found, "beside">;

/** The tables of one row of headings: each run of headings is one, or two without a gap, or all runs together are one. */
export function splitHeader(headings: readonly HeaderCell[], decided: DecidedHeadings): Found[] {
  const segments = segmentsOf(headings);
  const found = segments.map((cells) => inOnePiece(cells, decided) ?? inTwoPieces(cells, decided));
  const beside = segments.filter((_, i) => found[i] === null).flat();
  if (found.some((each) => each !== null)) {
    return found.flatMap((each) => each ?? []).map((each) => ({ ...each, beside }));
  }
  const whole = bestSpec(headings, decided);
  if (whole) return [{ cells: headings, ...whole, beside: [] }];
  const possible = segments.filter((cells) => cells.length >= 2 && cells.some((cell) => isChildHeading(cell, decided)));
  return possible.map((cells) => ({ cells, spec: null, match: null, beside: [] }));
}

function inOnePiece(cells: readonly HeaderCell[], decided: DecidedHeadings): FoundTable[] | null {
  const best = bestSpec(cells, decided);
  return best && best.match.twice.length === 0 ? [{ cells, ...best }] : null;
}

/** Two tables without a gap: of the places where both halves are tables, the one that reads most headings. */
function inTwoPieces(cells: readonly HeaderCell[], decided: DecidedHeadings): FoundTable[] | null {
  let most: readonly FoundTable[] = [];
  for (let cut = 1; cut < cells.length; cut += 1) {
    const first = inOnePiece(cells.slice(0, cut), decided);
    const second = first && inOnePiece(cells.slice(cut), decided);
    if (first && second && headingsRead([...first, ...second]) > headingsRead(most)) most = [...first, ...second];
  }
  const best = most.length > 0 ? null : bestSpec(cells, decided);
  return best ? [{ cells, ...best }] : most.length > 0 ? [...most] : null;
}

function headingsRead(tables: readonly FoundTable[]): number {
  return tables.reduce((sum, { match }) => sum + (match?.columns.size ?? 0), 0);
}

function isChildHeading(cell: HeaderCell, decided: DecidedHeadings): boolean {
  const child = specOf("Children").columns[0];
  if (!child) return false;
  const names = headingKeys(child);
  return cell.keys.some((key) => names.includes(key) || decided.get("Observations")?.get(key) === "child");
}
