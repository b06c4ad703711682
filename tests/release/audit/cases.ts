import { EMPTY_LEDGER, appendEntry, type Ledger } from "../../../src/release/ledger";
import type { Solver } from "../../../src/release/linear-model";
import { readRecords } from "../../../src/records/read-records";
import { prepareRelease } from "../../../src/report/prepare-release";
import type { ReleasableId } from "../../../src/tables/table";
import { type Release, settingsOf } from "./audit";
import { chanceOf, LAST_DAY, type RandomProgram, workbookOf } from "./random-program";

/** Releases one after another: what each asks for. */
export interface Case {
  readonly name: string;
  readonly minimum: number;
  readonly asks: readonly { readonly entries: Record<string, unknown>; readonly tables: readonly ReleasableId[] }[];
}

const EDGES = [
  [6, 18],
  [12, 24],
  [9, 15, 24],
  [3, 12],
  [6, 12, 24],
];
const MINIMA = [5, 10, 11];

/** The case of a seed: its kind, minimum, bands and groups. */
export function caseOf(seed: number): Case {
  const chance = chanceOf(seed + 5000);
  const pick = <T>(from: readonly T[]): T => from[Math.floor(chance() * from.length)]!;
  const minimum = pick(MINIMA);
  const edges = pick(EDGES);
  const at = (entries: Record<string, unknown>, tables: readonly ReleasableId[]) => ({
    entries: { asOf: LAST_DAY, from: "2026-10-01", edges, by: [], minimumCell: minimum, ...entries },
    tables,
  });
  const [by, other] = pick([
    [["Site"], ["Therapist"]],
    [["Therapist"], ["Site"]],
    [["Site", "Therapist"], ["Site"]],
  ]);
  const box = ["met-by-band"] as const;
  const ages = pick<readonly ReleasableId[]>([["met-by-band"], ["reached-by-age"], ["met-by-band", "reached-by-age"]]);
  const period = (from: string, asOf: string) => at({ from, asOf }, ["referrals"]);
  const year = period("2026-01-01", "2026-12-31");
  const kinds: Record<string, () => Case["asks"]> = {
    "margins and percents": () => [at({ by }, ages)],
    "all tables at once": () => [at({ by, from: "2026-01-01" }, ["met-by-band", "reached-by-age", "referrals"])],
    "quarters, then the year": () => [
      ...["2026-01-01", "2026-04-01", "2026-07-01", "2026-10-01"].map((from, q) =>
        period(from, ["2026-03-31", "2026-06-30", "2026-09-30", "2026-12-31"][q]!),
      ),
      year,
    ],
    "year to date, again and again": () => [
      period("2026-01-01", pick(["2026-03-31", "2026-05-31"])),
      period("2026-01-01", pick(["2026-06-30", "2026-09-30"])),
      year,
    ],
    "everybody after groups": () => [at({ by }, ages), at({}, ages)],
    "groups after everybody": () => [at({}, ages), at({ by }, ages)],
    "other groups": () => [at({ by }, ages), at({ by: other }, ages)],
    "other bands": () => [at({ by }, ages), at({ by, edges: pick(EDGES) }, ages)],
    "other bands, then everybody": () => [
      at({ by }, box),
      at({ by, edges: pick(EDGES) }, box),
      at({ edges: pick(EDGES) }, box),
    ],
    "one table after another": () => [
      at({ by }, pick([["met-by-band"], ["reached-by-age"]])),
      at({ by, from: "2026-01-01" }, ["reached-by-age", "met-by-band"]),
      at({ from: "2026-01-01" }, ["referrals"]),
    ],
    "boxes, and ages in a release of their own": () => [at({ by }, ["met-by-band"]), at({}, ["reached-by-age"])],
  };
  const name = Object.keys(kinds)[seed % Object.keys(kinds).length]!;
  return { name, minimum, asks: kinds[name]!() };
}

export interface Released {
  readonly releases: readonly Release[];
  readonly refused: number;
  readonly notCovered: readonly string[];
  readonly ledger: Ledger;
  /** What counts were rounded to; 1: they were not. */
  readonly base: number;
}

export interface ReleaseHow {
  readonly before?: Ledger;
  readonly method?: "hide" | "round" | "ranges";
  /** How often the search for a better pattern may ask whether it should end: the same on every machine. */
  readonly mostAsks?: number;
  readonly settings?: Record<string, unknown>;
}

/** Prepares the releases of a case one after another, each against the ledger of those before; refused ones never left. */
export function release(
  program: RandomProgram,
  { asks }: Case,
  solver: Solver,
  { before = EMPTY_LEDGER, method = "hide", mostAsks = Infinity, settings: more = {} }: ReleaseHow = {},
): Released {
  let ledger = before;
  const releases: Release[] = [];
  const notCovered = new Set<string>();
  let base = 1;
  for (const { entries, tables } of asks) {
    const settings = settingsOf({ ...entries, ...more, releaseMethod: method });
    let asks = 0;
    const isTimeUp = () => (asks += 1) > mostAsks;
    const found = prepareRelease(readRecords(workbookOf(program), settings, []), {
      settings,
      tables,
      ledger,
      solver,
      isTimeUp,
    });
    if (!("tables" in found)) continue;
    ledger = appendEntry(ledger, found.entry);
    releases.push({ entries, tables, printed: found.tables });
    base = found.rule.base ?? 1;
    found.notCovered.forEach((sentence) => notCovered.add(sentence));
  }
  return { releases, refused: asks.length - releases.length, notCovered: [...notCovered], ledger, base };
}
