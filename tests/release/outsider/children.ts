import { type Sum, sumOf, type Unknowns } from "./model";
import type { Printed, Sheet } from "./leaving";
import { addDays } from "../../oracle/calendar";

/** Where a child stands: in which group, followed or gone since which stretch of days, in which bands of either age. */
export interface Kind {
  readonly group: Readonly<Record<string, string>>;
  /** -1: followed; otherwise the stretch that the last day lies in, the earliest first. */
  readonly gone: number;
  readonly bands: Readonly<Record<Basis, number>>;
  readonly column: number;
}

export type Basis = "corrected" | "chronological";

/** Correcting stops here (months), and a child can be born at most this much too early. Source: METHOD.md, section 3. */
const CORRECTED_UNTIL = 24;
const MOST_CORRECTION = 5;

/** Everybody ever in the program up to one day, in every kind that the definitions allow (METHOD.md, sections 2 to 5). */
export class Children {
  readonly edges: readonly number[];
  readonly kinds: readonly Kind[];
  /** First days of the stretches that last days lie in; before the first of them there is one more. */
  readonly starts: readonly string[];

  constructor(
    readonly unknowns: Unknowns,
    readonly sheets: readonly Sheet[],
    readonly asOf: string,
  ) {
    this.edges = [...new Set(sheets.flatMap(({ edges }) => edges))].sort((a, b) => a - b);
    const ofPeriod = sheets.filter(({ id }) => id === "met-by-band-left" || id === "referrals" || id === "ratings");
    const days = ofPeriod.flatMap(({ from, id }) => [
      addDays(from, -1),
      from,
      ...(id === "referrals" ? quartersOf(from, asOf).map(([first]) => first) : []),
    ]);
    this.starts = [...new Set(days)].sort();
    this.kinds = this.groups().flatMap((group) => this.kindsOf(group));
  }

  /** Children of some kind. */
  sum(is: (kind: Kind) => boolean): Sum {
    return sumOf(this.kinds.filter(is).map(({ column }) => column));
  }

  /** The pieces that the edges of all releases cut a band into. */
  isIn(band: number, [from, to]: readonly [number, number]): boolean {
    const [low, high] = [this.edges[band - 1] ?? -Infinity, this.edges[band] ?? Infinity];
    return low >= from && high <= to;
  }

  /** True where a child's last day in the program is this one or later; not for those still in it. */
  isGoneSince({ gone }: Kind, day: string): boolean {
    return gone >= 0 && gone > this.starts.indexOf(day);
  }

  private kindsOf(group: Kind["group"]): Kind[] {
    const gone = Array.from({ length: this.starts.length + 1 }, (_, at) => at);
    return [-1, ...gone].flatMap((at) => {
      // of those gone before every period no table tells an age
      if (at === 0) return [this.kind(group, 0, -1, -1)];
      return this.bandPairs().map(([corrected, chronological]) => this.kind(group, at, corrected, chronological));
    });
  }

  private kind(group: Kind["group"], gone: number, corrected: number, chronological: number): Kind {
    return { group, gone, bands: { corrected, chronological }, column: this.unknowns.column() };
  }

  private bandPairs(): [corrected: number, chronological: number][] {
    const bands = Array.from({ length: this.edges.length + 1 }, (_, at) => at);
    return bands.flatMap((chronological) =>
      bands
        .filter((corrected) => this.canBe(corrected, chronological))
        .map((corrected): [number, number] => [corrected, chronological]),
    );
  }

  /** A corrected age is never above the chronological one, and the same from where correcting stops. */
  private canBe(corrected: number, chronological: number): boolean {
    if (chronological === 0 && (this.edges[0] ?? 0) <= 0) return false;
    if (corrected === chronological) return true;
    const [lowest, highest] = [this.edges[chronological - 1] ?? -Infinity, this.edges[corrected] ?? Infinity];
    return corrected < chronological && lowest < CORRECTED_UNTIL && lowest - highest < MOST_CORRECTION;
  }

  /** Every value that a table is grouped by, each with each: what goes with what, only rows can say. */
  private groups(): Readonly<Record<string, string>>[] {
    const columns = [...new Set(this.sheets.flatMap(({ by }) => by))].sort();
    return columns.reduce<Record<string, string>[]>(
      (groups, column) => {
        const own = this.sheets.filter(({ by }) => by.includes(column)).flatMap(({ rows }) => rows);
        const values = [...new Set(own.map((row) => row[column] ?? ""))];
        return groups.flatMap((group) => values.map((value) => ({ ...group, [column]: value })));
      },
      [{}],
    );
  }
}

export function isOfGroup(group: Kind["group"], row: Printed, by: readonly string[]): boolean {
  return by.every((column) => group[column] === row[column]);
}

/** First and last day of each calendar quarter of a period, as far as it lies in it. */
export function quartersOf(from: string, to: string): [first: string, last: string][] {
  const quarters: [string, string][] = [];
  for (let first = from; first <= to;) {
    const [year, month] = [Number(first.slice(0, 4)), Math.floor((Number(first.slice(5, 7)) - 1) / 3) * 3 + 4];
    const next = month > 12 ? `${year + 1}-01-01` : `${year}-${String(month).padStart(2, "0")}-01`;
    quarters.push([first, next > to ? to : addDays(next, -1)]);
    first = next;
  }
  return quarters;
}

/** `6 to <12 months` in months. */
export function monthsOf(label: string): readonly [from: number, to: number] {
  const before = /^before (-?[\d.]+) months$/.exec(label);
  if (before) return [-Infinity, Number(before[1])];
  const last = /^(-?[\d.]+) months and over$/.exec(label);
  if (last) return [Number(last[1]), Infinity];
  const both = /^(-?[\d.]+) to <(-?[\d.]+) months$/.exec(label);
  if (!both) throw new Error(`no band is called ${label}`);
  return [Number(both[1]), Number(both[2])];
}
