import type { Highs } from "highs";
import type { Sheet } from "./leaving";
import { type Asking, plus, type Sum } from "./model";
import { cellName, COUNTS, derivedOf } from "./secrets";
import type { Skill } from "./skills";
import { Outsider } from "./system";

/** What the files of some releases of the same records give away. */
export interface Found {
  /** Truly small counts, printed or not. */
  readonly small: number;
  /** Those proved to be small. */
  readonly proved: readonly string[];
}

interface How {
  readonly skills: readonly Skill[];
  readonly minimum: number;
  readonly highs: Highs;
  /** Printed counts lie less than this from the truth; 1: they are true. */
  readonly base?: number;
}

interface Secret {
  readonly name: string;
  readonly column: number;
}

/** Proves what can be proved from printed tables. @param truths - the same tables with nothing held back */
export function attack(sheets: readonly Sheet[], truths: readonly Sheet[], how: How): Found {
  const outsider = new Outsider(sheets, how.skills);
  const counts = countsIn(truths);
  const secrets = secretsOf(outsider, sheets, counts, how.minimum);
  for (const sheet of sheets) know(outsider, sheet, how.base ?? 1);
  const asking = outsider.unknowns.solver(how.highs);
  try {
    return { small: secrets.length, proved: provedOf(asking, secrets, how.minimum) };
  } finally {
    asking.done();
  }
}

/** True where the true counts agree with all that the outsider takes for granted: else its proofs prove nothing. */
export function holdsFor(truths: readonly Sheet[], how: How): boolean {
  const outsider = new Outsider(truths, how.skills);
  for (const sheet of truths) know(outsider, sheet, 1);
  const asking = outsider.unknowns.solver(how.highs);
  const { status } = asking.most(new Map());
  asking.done();
  return status === "optimal";
}

function countsIn(truths: readonly Sheet[]): Map<string, number> {
  const counts = new Map<string, number>();
  for (const sheet of truths) {
    for (const row of sheet.rows) {
      for (const column of COUNTS[sheet.id] ?? []) {
        if ((row[column] ?? "") !== "") counts.set(cellName(sheet, row, column), Number(row[column]));
      }
    }
  }
  return counts;
}

function secretsOf(
  outsider: Outsider,
  sheets: readonly Sheet[],
  counts: Map<string, number>,
  minimum: number,
): Secret[] {
  const printed = sheets.flatMap((sheet) =>
    sheet.rows.flatMap((row) =>
      (COUNTS[sheet.id] ?? [])
        .filter((column) => row[column] !== undefined && row[column] !== "")
        .map((column) => ({ name: cellName(sheet, row, column), terms: [[cellName(sheet, row, column), 1]] as const })),
    ),
  );
  const named = new Map([...printed, ...derivedOf(sheets)].map((each) => [each.name, each]));
  return [...named.values()].flatMap(({ name, terms }) => {
    const known = terms.map(([cell, times]) => times * (counts.get(cell) ?? NaN));
    const count = known.reduce((total, each) => total + each, 0);
    if (Number.isNaN(count)) throw new Error(`the true count of ${name} is not known`);
    if (count < 1 || count >= minimum) return [];
    const sum = terms.reduce<Sum>(
      (total, [cell, times]) => plus(total, outsider.cells.get(cell)!, times),
      new Map<number, number>(),
    );
    return [{ name, column: outsider.unknowns.named(sum) }];
  });
}

/** Takes in what a table shows: counts, ranges and shares. */
function know(outsider: Outsider, sheet: Sheet, base: number): void {
  for (const row of sheet.rows) {
    const sumFor = (column: string) => outsider.cells.get(cellName(sheet, row, column));
    for (const column of COUNTS[sheet.id] ?? []) {
      const [sum, shown] = [sumFor(column), row[column] ?? ""];
      const [, low, high] = /^(\d+)(?: to (\d+)|-(\d+))?$/.exec(shown) ?? [];
      if (sum === undefined || low === undefined) continue;
      if (high !== undefined) outsider.unknowns.know(sum, Number(low), Number(high));
      else outsider.unknowns.know(sum, Math.max(0, Number(low) - base + 1), Number(low) + base - 1);
    }
    if (base > 1) continue;
    for (const [figure, part, whole] of SHARES[sheet.id] ?? []) {
      const ratio = fractionOf(row[figure]);
      const [own, of] = [sumFor(part), sumFor(whole)];
      if (ratio === null || own === undefined || of === undefined) continue;
      const [above, below] = ratio;
      outsider.unknowns.know(plus(scaled(own, below), scaled(of, above), -1), 0);
    }
  }
}

const SHARES: Readonly<
  Partial<Record<Sheet["id"], readonly (readonly [figure: string, part: string, whole: string])[]>>
> = {
  "met-by-band": [
    ["shareMet", "met", "assessed"],
    ["lowest", "met", "children"],
  ],
  "met-by-band-left": [
    ["shareMet", "met", "assessed"],
    ["lowest", "met", "children"],
  ],
  "reached-by-age": [["lowest", "met", "children"]],
  "referral-steps": [["share", "count", "of"]],
  trend: [["shareMet", "met", "assessed"]],
};

function isNumber(value: string | undefined): boolean {
  return value !== undefined && /^-?\d/.test(value);
}

function scaled(sum: Sum, by: number): Sum {
  return new Map([...sum].map(([column, times]) => [column, times * by]));
}

/** A printed share as the fraction of least terms. */
function fractionOf(value: string | undefined): readonly [number, number] | null {
  if (!isNumber(value)) return null;
  const share = Number(value);
  for (let below = 1; below <= 2000; below += 1) {
    const above = Math.round(share * below);
    if (Math.abs(share * below - above) < 1e-9) return [above, below];
  }
  throw new Error(`${value} is no share of whole counts`);
}

const SLACK = 1e-6;
/** Answers that move many counts at once, before each is asked for alone. */
const ROUNDS = 6;

function provedOf(asking: Asking, secrets: readonly Secret[], minimum: number): string[] {
  const open = new Map(secrets.map((secret) => [secret.column, secret.name]));
  const cross = (values: Float64Array) => {
    for (const column of open.keys()) {
      const value = values[column] as number;
      if (value < 1 - SLACK || value > minimum - 1 + SLACK) open.delete(column);
    }
  };
  for (let round = 0; round < ROUNDS && open.size > 0; round += 1) {
    const wish = new Map([...open.keys()].map((column, at) => [column, (at + round) % 3 === 0 ? -1 : 1]));
    const { status, values } = asking.most(wish);
    if (status === "infeasible") throw new Error("what is printed contradicts itself, or the definitions");
    if (status === "optimal") cross(values);
  }
  const proved: string[] = [];
  for (const [column, name] of [...open]) {
    if (!open.has(column)) continue;
    const isProved = [1, -1].every((sign) => {
      const { status, objective, values } = asking.most(new Map([[column, sign]]));
      if (status === "infeasible") throw new Error("what is printed contradicts itself, or the definitions");
      if (status !== "optimal") return false;
      cross(values);
      return sign > 0 ? objective <= minimum - 1 + SLACK : -objective >= 1 - SLACK;
    });
    if (isProved) proved.push(name);
    open.delete(column);
  }
  return proved;
}
