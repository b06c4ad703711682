import { addDays } from "../../oracle/calendar";
import { type Children, isOfGroup, monthsOf, quartersOf } from "./children";
import type { Printed, Sheet } from "./leaving";
import { plus, type Sum, sumOf, type Unknowns } from "./model";

/** The sums that a row of referrals prints. */
export interface ReferralRow {
  readonly children: Sum;
  readonly referrals: Sum;
  readonly childrenReferred: Sum;
}

/** Referrals of every row by the stretches of days that the periods of all releases cut time into: they add up. */
export class Referrals {
  private readonly stretches: readonly string[];
  private readonly counts = new Map<string, number>();

  constructor(
    private readonly unknowns: Unknowns,
    private readonly sheets: readonly Sheet[],
  ) {
    const own = sheets.filter(({ id }) => id === "referrals" || id === "referral-steps");
    const ends = own
      .flatMap(({ from, asOf }) => quartersOf(from, asOf))
      .flatMap(([first, last]) => [first, addDays(last, 1)]);
    this.stretches = [...new Set(ends)].sort();
    this.tieStretches();
  }

  /** Referrals from one day to another, of a row of some dimension. */
  sum(dimension: string, value: string, from: string, to: string): Sum {
    return this.inStretches(from, to, (stretch) => [this.count(dimension, value, stretch)]);
  }

  /** Those made in some months of age. */
  inMonths(months: readonly [number, number], from: string, to: string): Sum {
    return this.inStretches(from, to, (stretch) =>
      this.pieces(months).map((piece) => this.count("band", piece, stretch)),
    );
  }

  private inStretches(from: string, to: string, columnsOf: (stretch: string) => number[]): Sum {
    return sumOf(this.stretches.filter((start) => start >= from && start <= to).flatMap(columnsOf));
  }

  private count(dimension: string, value: string, stretch: string): number {
    const name = JSON.stringify([dimension, value, stretch]);
    const known = this.counts.get(name) ?? this.unknowns.column();
    this.counts.set(name, known);
    return known;
  }

  private pieces([from, to]: readonly [number, number]): string[] {
    const edges = [...new Set(this.sheets.flatMap((sheet) => sheet.edges))].sort((a, b) => a - b);
    return [-Infinity, ...edges].flatMap((low, at) =>
      low >= from && (edges[at] ?? Infinity) <= to ? [String(low)] : [],
    );
  }

  /** Each referral is of one site, band and source; it names one area or more, and each of them once. */
  private tieStretches(): void {
    const rows = this.sheets.filter(({ id }) => id === "referrals").flatMap((sheet) => sheet.rows);
    const valuesOf = (dimension: string) => [
      ...new Set(rows.filter((row) => row["dimension"] === dimension).map((row) => row["value"] ?? "")),
    ];
    const [sites, areas] = [valuesOf("site"), valuesOf("area")];
    for (const stretch of this.stretches.slice(0, -1)) {
      const all = sumOf([this.count("all", "", stretch)]);
      const of = (dimension: string, values: readonly string[]) =>
        sumOf(values.map((value) => this.count(dimension, value, stretch)));
      if (rows.length === 0) continue;
      for (const dimension of ["site", "source"]) {
        if (valuesOf(dimension).length > 0) this.unknowns.same(all, of(dimension, valuesOf(dimension)));
      }
      this.unknowns.same(all, of("band", this.pieces([-Infinity, Infinity])));
      this.unknowns.within(all, of("area", areas));
      areas.forEach((area) => this.unknowns.within(of("area", [area]), all));
      if (valuesOf("site and area").length === 0) continue;
      const pairs = (sitesOf: readonly string[], areasOf: readonly string[]) =>
        of(
          "site and area",
          sitesOf.flatMap((site) => areasOf.map((area) => `${site} / ${area}`)),
        );
      areas.forEach((area) => this.unknowns.same(of("area", [area]), pairs(sites, [area])));
      for (const site of sites) {
        this.unknowns.within(of("site", [site]), pairs([site], areas));
        areas.forEach((area) => this.unknowns.within(pairs([site], [area]), of("site", [site])));
      }
    }
  }
}

/** Children followed and children referred, in the rows of one release of referrals (METHOD.md, section 6). */
export class ReferralPeriod {
  private readonly rows = new Map<string, ReferralRow>();

  constructor(
    private readonly children: Children,
    private readonly referrals: Referrals,
    private readonly sheet: Sheet,
  ) {
    const all = this.make("all", "");
    for (const row of sheet.rows) this.make(row["dimension"] ?? "", row["value"] ?? "");
    const of = (dimension: string) =>
      sheet.rows.filter((row) => row["dimension"] === dimension).map((row) => this.row(dimension, row["value"] ?? ""));
    const { unknowns } = children;
    for (const dimension of ["site", "area", "band", "quarter", "source"]) {
      const parts = of(dimension);
      if (parts.length === 0) continue;
      this.cover(
        all.childrenReferred,
        parts.map((part) => part.childrenReferred),
      );
      if (dimension !== "area" && dimension !== "source")
        this.cover(
          all.children,
          parts.map((part) => part.children),
        );
    }
    for (const row of sheet.rows.filter((each) => each["dimension"] === "site and area")) {
      const [site = "", area = ""] = (row["value"] ?? "").split(" / ");
      const own = this.row("site and area", row["value"] ?? "");
      unknowns.within(own.childrenReferred, this.row("site", site).childrenReferred);
      unknowns.within(own.childrenReferred, this.row("area", area).childrenReferred);
    }
  }

  row(dimension: string, value: string): ReferralRow {
    return this.rows.get(JSON.stringify([dimension, value])) ?? this.make(dimension, value);
  }

  private cover(whole: Sum, parts: readonly Sum[]): void {
    parts.forEach((part) => this.children.unknowns.within(part, whole));
    this.children.unknowns.within(
      whole,
      parts.reduce((sum, part) => plus(sum, part), new Map<number, number>()),
    );
  }

  private make(dimension: string, value: string): ReferralRow {
    const { unknowns } = this.children;
    const { from, asOf } = this.sheet;
    const [first, last] = dimension === "quarter" ? quarterOf(value, from, asOf) : [from, asOf];
    const referrals =
      dimension === "band"
        ? this.referrals.inMonths(monthsOf(value), first, last)
        : dimension === "quarter"
          ? this.referrals.sum("all", "", first, last)
          : this.referrals.sum(dimension, value, first, last);
    const childrenReferred = sumOf([unknowns.column()]);
    const children = this.followed(dimension, value, first);
    unknowns.within(childrenReferred, referrals);
    unknowns.within(childrenReferred, children);
    const row = { children, referrals, childrenReferred };
    this.rows.set(JSON.stringify([dimension, value]), row);
    return row;
  }

  /** Who is there on the as-of date, or was on the last day, was there; who came or went elsewhere may have been too. */
  private followed(dimension: string, value: string, first: string): Sum {
    const { children } = this;
    const inPeriod = (day: string) => children.sum((kind) => kind.gone < 0 || children.isGoneSince(kind, day));
    if (dimension === "quarter") {
      const [, last] = quarterOf(value, this.sheet.from, this.sheet.asOf);
      const next = addDays(last, 1);
      const later = next > this.sheet.asOf ? new Map<number, number>() : inPeriod(next);
      return this.some(plus(inPeriod(first), later, -1), later);
    }
    if (dimension === "band") {
      const months = monthsOf(value);
      const isThere = (is: (band: number) => boolean) =>
        children.sum(
          (kind) => (kind.gone < 0 || children.isGoneSince(kind, this.sheet.from)) && is(kind.bands.corrected),
        );
      const isPast = (band: number) => (children.edges[band - 1] ?? -Infinity) >= months[1];
      return this.some(
        isThere((band) => children.isIn(band, months)),
        isThere(isPast),
      );
    }
    const site = dimension === "site" ? value : dimension === "site and area" ? value.split(" / ")[0] : undefined;
    if (site === undefined) return inPeriod(this.sheet.from);
    if (dimension === "site and area") return this.row("site", site).children;
    const all = inPeriod(this.sheet.from);
    if (!children.kinds.some(({ group }) => "Site" in group)) return this.some(new Map(), all);
    const own = children.sum(
      (kind) =>
        isOfGroup(kind.group, { Site: site } as Printed, ["Site"]) &&
        (kind.gone < 0 || children.isGoneSince(kind, this.sheet.from)),
    );
    return this.some(own, plus(all, own, -1));
  }

  /** All of one sum and an unknown part of another. */
  private some(all: Sum, more: Sum): Sum {
    if (more.size === 0) return all;
    const part = sumOf([this.children.unknowns.column()]);
    this.children.unknowns.within(part, more);
    return plus(all, part);
  }
}

/** `2026 Q1` or the like, as far as the period holds it. */
function quarterOf(label: string, from: string, asOf: string): readonly [string, string] {
  const [, year, quarter] = /(\d{4}).*?Q?(\d)$/.exec(label) ?? [];
  const month = String(Number(quarter) * 3 - 2).padStart(2, "0");
  const found = quartersOf(from, asOf).find(
    ([first]) =>
      first.slice(0, 4) === year && Math.floor((Number(first.slice(5, 7)) - 1) / 3) * 3 + 1 === Number(month),
  );
  if (!found) throw new Error(`${label} is no quarter of the period`);
  return found;
}
