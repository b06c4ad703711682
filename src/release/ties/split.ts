import { smallSpan, type Cell, type Equation } from "../system";
import type { Combined } from "./combined";
import { fillCounts } from "./fill";
import { type KnownZeros } from "./known-zeros";
import { type Axis, type Family, familyOf, type Span, spanOf, type Standing } from "./spans";

/**
 * Ties counts over spans that overlap without being the same, as those of two releases do: the axis is cut at every edge
 * of either, and each span is the sum of the pieces it is cut into. So a year less three of its quarters is a cell, and so
 * is what lies between two ways to cut ages.
 *
 * @returns how many families could not be tied, because their counts contradict one another: records have changed
 */
export function splitSpans(combined: Combined, axis: Axis, minimum: number, zerosOf: KnownZeros): number {
  const families = familiesIn(combined, axis);
  let contradictions = 0;
  for (const family of families.values()) {
    if (!isMixed(combined, family)) continue;
    for (const zero of zerosOf(family)) addSpan(combined, axis, family, zero);
    if (!addPieces(combined, axis, family, minimum)) contradictions += 1;
  }
  return contradictions;
}

function familiesIn({ cells }: Combined, axis: Axis): Map<string, Family> {
  const families = new Map<string, Family>();
  cells.forEach(({ key }, cell) => {
    const found = spanOf(axis, key);
    if (found === null) return;
    const name = familyOf(axis, found.parts);
    const family = families.get(name) ?? { parts: found.parts, spans: new Map<string, Standing>() };
    family.spans.set(key, { span: found.span, cell });
    families.set(name, family);
  });
  return families;
}

/** True where two spans of different sources overlap without being the same. */
function isMixed({ sources }: Combined, { spans }: Family): boolean {
  const all = [...spans.values()];
  const together = (one: Standing, other: Standing) => sources.some((own) => own.has(one.cell) && own.has(other.cell));
  return all.some((one, at) =>
    all.slice(at + 1).some((other) => overlap(one.span, other.span) && !together(one, other)),
  );
}

function overlap(one: Span, other: Span): boolean {
  return one.from < other.to && other.from < one.to;
}

/** A span that a release has no row for, because it holds nobody. */
function addSpan(combined: Combined, axis: Axis, { parts, spans }: Family, span: Span): void {
  const key = axis.write(parts, span);
  if (spans.has(key)) return;
  const place = `${parts.subject} ${axis.field} ${key}: no row`;
  spans.set(key, { span, cell: combined.put({ key, place, count: 0, showing: "out", secret: null, loss: 1 }) });
}

function addPieces(combined: Combined, axis: Axis, family: Family, minimum: number): boolean {
  const { spans, pieces } = cutAtEdges(axis, family);
  const standing = [...spans, ...pieces.filter(({ key }) => !family.spans.has(key))];
  const placeOf = new Map(standing.map(({ key }, at) => [key, at]));
  const like = combined.cells[spans[0]!.cell] as Cell;
  const cells = standing.map(({ key, cell }) =>
    cell === null ? pieceCell(key, like) : (combined.cells[cell] as Cell),
  );
  const sums = spans.flatMap(({ key, span }): Equation[] => {
    const within = pieces.filter((piece) => overlap(span, piece.span));
    return within.length === 1 && within[0]!.key === key
      ? []
      : [
          sumOf(
            placeOf.get(key)!,
            within.map((piece) => placeOf.get(piece.key)!),
          ),
        ];
  });
  if (!fillCounts(cells, sums)) return false;
  const places = standing.map(({ cell }, at) => commit(combined, cell, cells[at] as Cell, minimum));
  for (const { terms, equals } of sums) {
    combined.equations.push({ terms: terms.map((term) => ({ ...term, cell: places[term.cell] as number })), equals });
  }
  return true;
}

interface Cut {
  readonly key: string;
  readonly span: Span;
  /** Null: no release has it. */
  readonly cell: number | null;
}

function cutAtEdges(
  axis: Axis,
  { parts, spans }: Family,
): { readonly spans: readonly (Cut & Standing)[]; readonly pieces: readonly Cut[] } {
  const all = [...spans].map(([key, standing]) => ({ key, ...standing }));
  const edges = [...new Set(all.flatMap(({ span }) => [span.from, span.to]))].sort((a, b) => a - b);
  const pieces = edges.slice(1).map((to, at): Cut => {
    const span = { from: edges[at] as number, to };
    const key = axis.write(parts, span);
    return { key, span, cell: spans.get(key)?.cell ?? null };
  });
  return { spans: all, pieces: pieces.filter((piece) => all.some(({ span }) => overlap(span, piece.span))) };
}

function pieceCell(key: string, like: Cell): Cell {
  const place = `between two releases, near ${like.place}`;
  return { key, place, count: null, showing: "never", secret: null, loss: 1 };
}

function sumOf(whole: number, parts: readonly number[]): Equation {
  return { terms: [{ cell: whole, coefficient: 1 }, ...parts.map((cell) => ({ cell, coefficient: -1 }))], equals: 0 };
}

/** Whose families are behind a piece is not known here: each child counts as one. */
function commit(combined: Combined, known: number | null, cell: Cell, minimum: number): number {
  if (known !== null) {
    combined.cells[known] = cell;
    return known;
  }
  const secret = cell.count === null ? { low: 1, high: minimum - 1 } : smallSpan(cell.count, cell.count, minimum);
  return combined.put({ ...cell, secret });
}
