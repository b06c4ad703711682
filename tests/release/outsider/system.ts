import { type Basis, Children, isOfGroup, monthsOf } from "./children";
import type { Printed, Sheet } from "./leaving";
import { plus, type Sum, sumOf, Unknowns } from "./model";
import { Referrals, ReferralPeriod } from "./referred";
import { cellName } from "./secrets";
import { type Box, type Skill, Standing } from "./skills";
import { Steps } from "./steps";
import { addDays } from "../../oracle/calendar";

const MET: readonly Box[] = ["hadAtFirstLook", "gained"];
const BOXES: Readonly<Record<string, readonly Box[]>> = {
  hadAtFirstLook: ["hadAtFirstLook"],
  gained: ["gained"],
  notMet: ["notMet"],
  outOfDate: ["outOfDate"],
  lost: ["lost"],
  notAssessed: ["notAssessed"],
  assessed: [...MET, "notMet", "lost"],
  met: MET,
};

/**
 * The outsider's system: people in every kind that the definitions allow, each printed count a sum of kinds. It is made
 * from METHOD.md and from what is printed; nothing of it comes from the program.
 */
export class Outsider {
  readonly unknowns = new Unknowns();
  /** Each printed count as a sum. */
  readonly cells = new Map<string, Sum>();
  private readonly referrals: Referrals;
  /** By as-of date: the last days from which a child counts as left in a period. */
  private readonly leftDays = new Map<string, readonly string[]>();

  constructor(
    sheets: readonly Sheet[],
    private readonly skills: readonly Skill[],
  ) {
    this.referrals = new Referrals(this.unknowns, sheets);
    for (const asOf of new Set(sheets.map((sheet) => sheet.asOf))) {
      this.addDay(
        sheets.filter((sheet) => sheet.asOf === asOf),
        asOf,
      );
    }
  }

  private addDay(sheets: readonly Sheet[], asOf: string): void {
    const children = new Children(this.unknowns, sheets, asOf);
    const has = (id: Sheet["id"]) => sheets.some((sheet) => sheet.id === id);
    const leftSince = [
      ...new Set(sheets.filter(({ id }) => id === "met-by-band-left").map(({ from }) => addDays(from, -1))),
    ].sort();
    this.leftDays.set(asOf, leftSince);
    const cuts = {
      isCutByAge: has("reached-by-age"),
      isEver: has("reached-by-age") || has("age-when-met"),
      leftSince,
    };
    const isBySkill = ["met-by-band", "met-by-band-left", "reached-by-age", "age-when-met", "trend"] as const;
    const standings = isBySkill.some(has) ? this.skills.map((skill) => new Standing(children, skill, cuts)) : [];
    this.addPeople(children, standings, sheets);
    this.addServices(children, sheets);
  }

  private addPeople(children: Children, standings: readonly Standing[], sheets: readonly Sheet[]): void {
    for (const sheet of sheets) {
      if (sheet.id === "met-by-band" || sheet.id === "met-by-band-left") this.addBands(children, standings, sheet);
      if (sheet.id === "reached-by-age") this.addReached(children, standings, sheet);
      if (sheet.id === "age-when-met") this.addAttained(standings, sheet);
      if (sheet.id === "trend") this.addTrend(standings, sheet);
    }
  }

  private put(sheet: Sheet, row: Printed, cells: Readonly<Record<string, Sum>>): void {
    for (const [column, sum] of Object.entries(cells)) this.cells.set(cellName(sheet, row, column), sum);
  }

  private addBands(children: Children, standings: readonly Standing[], sheet: Sheet): void {
    const isLeft = sheet.id === "met-by-band-left";
    const since = addDays(sheet.from, -1);
    for (const row of sheet.rows) {
      const months = monthsOf(row["band"] ?? "");
      const own = standings.filter(({ skill }) =>
        row["skill"] === "all" ? skill.area === row["area"] : skill.id === row["skill"],
      );
      const isRow = (group: Record<string, string>) => isOfGroup(group, row, sheet.by);
      const total = (sumFor: (standing: Standing) => Sum) =>
        own.map(sumFor).reduce((sum, each) => plus(sum, each), new Map<number, number>());
      const boxes = Object.entries(BOXES).map(([column, of]): [string, Sum] => [
        column,
        total((standing) =>
          standing.sum(
            (state) =>
              (isLeft
                ? state.status === "left" && this.isSince(sheet, state.gone, since)
                : state.status === "followed") &&
              isRow(state.group) &&
              standing.isIn(state.band, months) &&
              state.box !== null &&
              of.includes(state.box),
          ),
        ),
      ]);
      const there = total(({ skill }) => this.inBand(children, sheet, row, skill.basis));
      this.put(sheet, row, { children: there, ...Object.fromEntries(boxes) });
      if (row["skill"] !== "all") this.unknowns.know(there, 1, Infinity);
    }
    this.addBandsWithout(children, sheet);
  }

  /** Left tables of one day nest: the n-th period from the last holds those of all later ones. */
  private isSince(sheet: Sheet, gone: number, since: string): boolean {
    return gone >= 1 + this.leftSinceOf(sheet).indexOf(since);
  }

  private leftSinceOf({ asOf }: Sheet): readonly string[] {
    return this.leftDays.get(asOf) ?? [];
  }

  private inBand(children: Children, sheet: Sheet, row: Printed, basis: Basis): Sum {
    const months = monthsOf(row["band"] ?? "");
    const since = addDays(sheet.from, -1);
    return children.sum(
      (kind) =>
        (sheet.id === "met-by-band" ? kind.gone < 0 : children.isGoneSince(kind, since)) &&
        isOfGroup(kind.group, row, sheet.by) &&
        children.isIn(kind.bands[basis], months),
    );
  }

  /** A table by age has no row where nobody is. */
  private addBandsWithout(children: Children, sheet: Sheet): void {
    const edges = [-Infinity, ...sheet.edges];
    const groups = children.kinds.map(({ group }) => group);
    const distinct = [
      ...new Map(groups.map((group) => [sheet.by.map((column) => group[column]).join("|"), group])).values(),
    ];
    for (const basis of ["corrected", "chronological"] as const) {
      const skills = this.skills.filter((skill) => skill.basis === basis).map(({ id }) => id);
      if (skills.length === 0) continue;
      for (const group of distinct) {
        for (const [at, low] of edges.entries()) {
          const months = [low, edges[at + 1] ?? Infinity] as const;
          const isHere = sheet.rows.some(
            (row) =>
              skills.includes(row["skill"] ?? "") &&
              isOfGroup(group, row, sheet.by) &&
              monthsOf(row["band"] ?? "")[0] === months[0],
          );
          if (isHere) continue;
          const since = addDays(sheet.from, -1);
          const nobody = children.sum(
            (kind) =>
              (sheet.id === "met-by-band" ? kind.gone < 0 : children.isGoneSince(kind, since)) &&
              sheet.by.every((column) => kind.group[column] === group[column]) &&
              children.isIn(kind.bands[basis], months),
          );
          this.unknowns.know(nobody, 0);
        }
      }
    }
  }

  private addReached(children: Children, standings: readonly Standing[], sheet: Sheet): void {
    for (const row of sheet.rows) {
      const standing = standings.find(({ skill }) => skill.id === row["skill"])!;
      const age = Number(row["age"]);
      const at = children.edges.indexOf(age);
      const of = (is: (ever: { is: string; without: number; met: number }) => boolean) =>
        standing.sum(({ group, ever }) => isOfGroup(group, row, sheet.by) && is(ever));
      const isMet = (ever: { is: string; met: number }) =>
        (ever.is === "had" || ever.is === "interval") && ever.met <= at;
      const isNotMet = (ever: { is: string; without: number; met: number }) => !isMet(ever) && ever.without > at;
      this.put(sheet, row, {
        children: of(() => true),
        met: of(isMet),
        notMet: of(isNotMet),
        notKnown: of((ever) => !isMet(ever) && !isNotMet(ever)),
      });
    }
    this.addGroupsWithout(children, sheet);
  }

  private addGroupsWithout(children: Children, sheet: Sheet): void {
    const nobody = children.sum(({ group }) => !sheet.rows.some((row) => isOfGroup(group, row, sheet.by)));
    if (nobody.size > 0) this.unknowns.know(nobody, 0);
  }

  private addAttained(standings: readonly Standing[], sheet: Sheet): void {
    for (const row of sheet.rows) {
      const standing = standings.find(({ skill }) => skill.id === row["skill"])!;
      const of = (...kinds: readonly string[]) =>
        standing.sum(({ group, ever }) => isOfGroup(group, row, sheet.by) && kinds.includes(ever.is));
      this.put(sheet, row, {
        children: of("not met", "had", "interval"),
        hadAtFirstLook: of("had"),
        interval: of("interval"),
        notMet: of("not met"),
      });
    }
  }

  private addTrend(standings: readonly Standing[], sheet: Sheet): void {
    const [year, month] = [sheet.asOf.slice(0, 4), Number(sheet.asOf.slice(5, 7))];
    const last = `${year} Q${Math.ceil(month / 3)}`;
    for (const row of sheet.rows) {
      if (row["quarter"]?.replace("-", " ") !== last) {
        const some = () => sumOf([this.unknowns.column()]);
        const [met, rest, more] = [some(), some(), some()] as const;
        this.put(sheet, row, { met, assessed: plus(met, rest), children: plus(plus(met, rest), more) });
        continue;
      }
      const standing = standings.find(({ skill }) => skill.id === row["skill"])!;
      const of = (boxes: readonly Box[] | null) =>
        standing.sum(
          ({ status, group, box }) =>
            status === "followed" && isOfGroup(group, row, sheet.by) && (boxes === null || boxes.includes(box!)),
        );
      this.put(sheet, row, { children: of(null), met: of(MET), assessed: of(BOXES["assessed"]!) });
    }
  }

  private addServices(children: Children, sheets: readonly Sheet[]): void {
    for (const sheet of sheets.filter(({ id }) => id === "referrals")) {
      const period = new ReferralPeriod(children, this.referrals, sheet);
      for (const row of sheet.rows) {
        const {
          children: followed,
          referrals,
          childrenReferred,
        } = period.row(row["dimension"] ?? "", row["value"] ?? "");
        this.put(sheet, row, { children: followed, referrals, childrenReferred });
        if (["site", "band", "quarter"].includes(row["dimension"] ?? "")) this.unknowns.know(followed, 1, Infinity);
      }
    }
    for (const sheet of sheets.filter(({ id }) => id === "referral-steps")) {
      const steps = new Steps(this.unknowns);
      this.unknowns.same(steps.all(), this.referrals.sum("all", "", sheet.from, sheet.asOf));
      for (const row of sheet.rows) this.put(sheet, row, steps.cells(row["step"] ?? ""));
    }
    for (const sheet of sheets.filter(({ id }) => id === "ratings")) this.addRatings(children, sheet);
  }

  /** Who left after half a year, and how each outcome of theirs was rated. */
  private addRatings(children: Children, sheet: Sheet): void {
    const leavers = sumOf([this.unknowns.column()]);
    const left = children.sum((kind) => children.isGoneSince(kind, addDays(sheet.from, -1)));
    this.unknowns.within(leavers, left);
    for (const outcome of new Set(sheet.rows.map((row) => row["outcome"]))) {
      const keys = ["a", "b", "aOrB", "c", "d", "e"];
      const of = Object.fromEntries(keys.map((key) => [key, this.unknowns.column()]));
      const sum = (...own: readonly string[]) => sumOf(own.map((key) => of[key] as number));
      this.unknowns.within(sum(...keys), leavers);
      for (const row of sheet.rows.filter((each) => each["outcome"] === outcome)) {
        const isFirst = row["statement"]?.includes("1") ?? false;
        this.put(sheet, row, {
          ...Object.fromEntries(keys.map((key) => [key, sum(key)])),
          count: isFirst ? sum("c", "d") : sum("d", "e"),
          of: isFirst ? sum("a", "b", "aOrB", "c", "d") : sum(...keys),
        });
      }
    }
  }
}
