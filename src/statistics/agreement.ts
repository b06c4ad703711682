import { normalHalfWidth } from "./distributions";

export interface Agreement {
  /** pairs compared */
  readonly n: number;
  /** pairs that agree, 0 to 100; null without a pair */
  readonly percent: number | null;
  /** agreement beyond chance, over the most that was possible beyond chance; null where chance alone would agree always */
  readonly kappa: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
  readonly reason: string | null;
}

export type Rating = string | number;

const USUAL_LEVEL = 0.95;

/**
 * How often two people gave the same result, and Cohen's kappa with large-sample limits, cut at -1 and 1.
 *
 * Source: Cohen (1960), Educ Psychol Meas 20:37-46; standard error: Fleiss, Cohen & Everitt (1969), Psychol Bull 72:323-327.
 *
 * @param first - results of the first of each pair
 * @param second - results of the second of each pair, in the same order
 * @throws {RangeError} when the columns differ in length or the level is not within 0 and 1
 */
export function agreement(first: readonly Rating[], second: readonly Rating[], level = USUAL_LEVEL): Agreement {
  if (first.length !== second.length) throw new RangeError("agreement: the two columns differ in length");
  const z = normalHalfWidth(level);
  const n = first.length;
  if (n === 0) return { n, percent: null, ...withoutKappa("there is no pair to compare") };
  const table = crossed(first, second);
  const agreed = table.shares.reduce((sum, row, index) => sum + row[index]!, 0);
  const byChance = table.rows.reduce((sum, row, index) => sum + row * table.columns[index]!, 0);
  const percent = (100 * first.filter((result, index) => result === second[index]).length) / n;
  if (onlyOne(table.rows) && onlyOne(table.columns) && agreed === 1) {
    return { n, percent, ...withoutKappa("all results are the same: chance alone would make every pair agree") };
  }
  const kappa = (agreed - byChance) / (1 - byChance);
  const half = z * standardError(table, agreed, byChance, n);
  return { n, percent, kappa, lower: Math.max(-1, kappa - half), upper: Math.min(1, kappa + half), reason: null };
}

interface Crossed {
  /** share of all pairs with each result by the first (row) and by the second (column) */
  readonly shares: readonly (readonly number[])[];
  readonly rows: readonly number[];
  readonly columns: readonly number[];
}

function crossed(first: readonly Rating[], second: readonly Rating[]): Crossed {
  // sorted, so that sums are made in the same order whatever the order of the pairs
  const results = [...new Set([...first, ...second])].sort();
  const place = new Map(results.map((result, index) => [result, index]));
  const shares = results.map(() => new Array<number>(results.length).fill(0));
  first.forEach((result, index) => (shares[place.get(result)!]![place.get(second[index]!)!]! += 1));
  shares.forEach((row) => row.forEach((count, column) => (row[column] = count / first.length)));
  const rows = shares.map((row) => row.reduce((sum, share) => sum + share, 0));
  const columns = results.map((_, column) => shares.reduce((sum, row) => sum + row[column]!, 0));
  return { shares, rows, columns };
}

function standardError({ shares, rows, columns }: Crossed, agreed: number, byChance: number, n: number): number {
  let onDiagonal = 0;
  let offDiagonal = 0;
  shares.forEach((row, i) =>
    row.forEach((share, j) => {
      if (i === j) onDiagonal += share * (1 - byChance - (rows[i]! + columns[i]!) * (1 - agreed)) ** 2;
      else offDiagonal += share * (columns[i]! + rows[j]!) ** 2;
    }),
  );
  const rest = (agreed * byChance - 2 * byChance + agreed) ** 2;
  const variance = (onDiagonal + (1 - agreed) ** 2 * offDiagonal - rest) / (n * (1 - byChance) ** 4);
  return Math.sqrt(Math.max(0, variance));
}

function onlyOne(shares: readonly number[]): boolean {
  return shares.filter((share) => share > 0).length === 1;
}

function withoutKappa(reason: string) {
  return { kappa: null, lower: null, upper: null, reason } as const;
}
