import { ALL_AGES, bandSpan } from "../draft/keys";
import type { Combined } from "./combined";
import { type Family, PERIODS, type Span, spanOf } from "./spans";

/** Spans for which a release has no row, because they hold nobody: everybody knows these zeros. */
export type KnownZeros = (family: Family) => readonly Span[];

/** Bands of every source that has some band of the family. @param edges - of each source, null where they are not known */
export function missingBands(combined: Combined, edges: readonly (readonly number[] | null)[]): KnownZeros {
  return ({ parts, spans }) => {
    if (parts.population === "ever followed") return [];
    const cells = [...spans.values()].map(({ cell }) => cell);
    return combined.sources.flatMap((own, source) => {
      const cuts = edges[source];
      if (!cuts || !cells.some((cell) => own.has(cell))) return [];
      return Array.from({ length: cuts.length + 1 }, (_, band) => bandOf(bandSpan(band, cuts)));
    });
  };
}

function bandOf(ages: string): Span {
  const [from, to] = ages.split("..");
  return { from: from ? Number(from) : -Infinity, to: to ? Number(to) : Infinity };
}

/**
 * The period of every source that has rows of the same kind (by site, by source, ...), but none of the family. A source
 * that cuts ages in another way says nothing about a band that it does not have.
 */
export function missingPeriods(combined: Combined, edges: readonly (readonly number[] | null)[]): KnownZeros {
  const kinds = combined.sources.map((own) => kindsOf(combined, own));
  return ({ parts, spans }) => {
    const cells = [...spans.values()].map(({ cell }) => cell);
    return combined.sources.flatMap((own, source) => {
      if (cells.some((cell) => own.has(cell)) || !hasBand(parts.ages, edges[source] ?? null)) return [];
      return [...(kinds[source]!.get(kindOf(parts))?.values() ?? [])];
    });
  };
}

function hasBand(ages: string, edges: readonly number[] | null): boolean {
  if (ages === ALL_AGES) return true;
  return edges !== null && Array.from({ length: edges.length + 1 }, (_, band) => bandSpan(band, edges)).includes(ages);
}

/** Of each kind of row, the periods that a source has rows for. */
function kindsOf({ cells }: Combined, own: ReadonlySet<number>): Map<string, Map<string, Span>> {
  const kinds = new Map<string, Map<string, Span>>();
  for (const cell of own) {
    const found = spanOf(PERIODS, cells[cell]!.key);
    if (found === null || kindOf(found.parts) === "") continue;
    const periods = kinds.get(kindOf(found.parts)) ?? new Map<string, Span>();
    kinds.set(kindOf(found.parts), periods.set(found.parts.when, found.span));
  }
  return kinds;
}

/** Site, area, source or band of a row, without its value; "" for everybody, who always have a row. */
function kindOf({ column, group, subject, ages, tag }: Family["parts"]): string {
  const kind = [group === "" ? "" : "group", subject.split(" ")[0] ?? "", ages === ".." ? "" : "band"].join(" ").trim();
  return kind === "" ? "" : `${column} by ${kind} ${tag ?? ""}`;
}
