import { EMPTY_LEDGER } from "../../../src/release/ledger";
import type { Solver } from "../../../src/release/linear-model";
import { chanceOf } from "../audit/random-program";
import { type Ask, leaving, type Sheet, truthOf } from "./leaving";
import { bookOf, LAST_DAY, programOf } from "./program";
import type { Skill } from "./skills";

/** Releases one after another, and the program they are of. */
export interface Case {
  readonly name: string;
  readonly seed: number;
  readonly size: number;
  readonly minimum: number;
  readonly asks: readonly Ask[];
  readonly skills: readonly Skill[];
}

const SKILLS: readonly Skill[] = [
  { id: "sits", area: "gross motor", basis: "corrected" },
  { id: "two words", area: "speech", basis: "chronological" },
  { id: "points", area: "speech", basis: "corrected" },
];
const ALL = [
  "met-by-band",
  "met-by-band-left",
  "reached-by-age",
  "age-when-met",
  "referrals",
  "referral-steps",
  "ratings",
  "trend",
] as const;

/** The case of a seed. */
export function caseOf(seed: number): Case {
  const chance = chanceOf(seed + 7000);
  const pick = <T>(from: readonly T[]): T => from[Math.floor(chance() * from.length)]!;
  const minimumCell = pick([5, 10, 11]);
  const size = pick([40, 90, 90, 120]);
  const edges = pick([
    [0, 12, 36],
    [12, 24],
    [6, 18],
    [9, 18, 24],
  ]);
  const base: Ask = { asOf: LAST_DAY, from: "2026-01-01", by: [], edges, tables: ALL, minimumCell };
  const kinds: Readonly<Record<string, () => readonly Ask[]>> = {
    "all tables": () => [base],
    "by site": () => [
      {
        ...base,
        by: ["Site"],
        tables: pick([
          ["met-by-band", "met-by-band-left", "age-when-met"],
          ["met-by-band", "reached-by-age", "referrals"],
        ]),
      },
    ],
    "children gone": () => [{ ...base, tables: ["met-by-band", "met-by-band-left", "reached-by-age", "age-when-met"] }],
    services: () => [
      {
        ...base,
        tables: ["met-by-band", "referrals", "referral-steps", "ratings"],
        from: pick(["2026-07-01", "2026-01-01"]),
      },
    ],
    "other ages on one day": () => [
      { ...base, tables: ["met-by-band"] },
      { ...base, tables: ["met-by-band", "age-when-met"], edges: [6, 12, 24] },
      { ...base, tables: ["met-by-band"], by: ["Site"] },
    ],
    "other periods on one day": () => [
      { ...base, tables: ["referrals"], from: "2026-10-01" },
      { ...base, tables: ["referrals", "met-by-band-left"], from: "2026-07-01" },
      { ...base, tables: ["met-by-band", "referrals"], from: "2026-01-01" },
    ],
  };
  const name = Object.keys(kinds)[seed % Object.keys(kinds).length]!;
  return { name, seed, size, minimum: minimumCell, asks: kinds[name]!(), skills: SKILLS };
}

/** Programs that the tests try; the script tries more. */
export function seedsOfTest(): number[] {
  return [0, 1, 2, 3, 4, 6, 7, 8, 9, 11, 12, 13, 14, 15, 16, 18, 20, 21, 22, 28];
}

/** What left, and the truth behind it. */
export interface Outside {
  readonly sheets: readonly Sheet[];
  readonly truths: readonly Sheet[];
  readonly refused: number;
}

export async function outsiderOf({ seed, size, asks }: Case, solver: Solver): Promise<Outside> {
  const book = bookOf(programOf(seed, size));
  let ledger = EMPTY_LEDGER;
  const sheets: Sheet[] = [];
  const truths: Sheet[] = [];
  let refused = 0;
  for (const ask of asks) {
    const left = await leaving(book, ask, { ledger, solver, mostAsks: 40 });
    if (left === null) {
      refused += 1;
      continue;
    }
    ledger = left.ledger;
    sheets.push(...left.sheets);
    truths.push(...truthOf(book, ask));
  }
  return { sheets, truths, refused };
}
