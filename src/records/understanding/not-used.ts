import { ruleOf } from "../findings/rules";
import type { TableUse } from "../records";

const NAMES: Readonly<Record<string, readonly [one: string, many: string]>> = {
  Observations: ["check", "checks"],
  Children: ["row of Children", "rows of Children"],
  Skills: ["skill", "skills"],
  Referrals: ["referral", "referrals"],
  Signs: ["sign", "signs"],
  Ratings: ["rating", "ratings"],
};

/** One table's rows that count nowhere. Rows of totals are no records, and not among them. */
export interface NotUsed {
  readonly table: string;
  readonly left: number;
  readonly of: number;
  /** "972 of 4,239 checks were not used." */
  readonly sentence: string;
}

/** What was left out, table by table, checks first; empty where everything was used. */
export function notUsed(input: readonly TableUse[]): NotUsed[] {
  return ["Observations", "Children", "Skills", "Referrals", "Signs", "Ratings"].flatMap((table) => {
    const uses = input.filter((each) => each.table === table);
    const totals = sum(uses.map(({ leftOut }) => leftOut[TOTAL] ?? 0));
    const of = sum(uses.map(({ rows }) => rows)) - totals;
    const left = of - sum(uses.map(({ used }) => used));
    if (left === 0) return [];
    const [one, many] = NAMES[table] as readonly [string, string];
    const sentence = `${plain(left)} of ${plain(of)} ${of === 1 ? one : many} ${left === 1 ? "was" : "were"} not used.`;
    return [{ table, left, of, sentence }];
  });
}

/** The first line after every reading: "972 of 4,239 checks were not used. See why." null where everything was used. */
export function notUsedSentence(input: readonly TableUse[]): string | null {
  const all = notUsed(input);
  return all.length === 0 ? null : `${all.map(({ sentence }) => sentence).join(" ")} See why.`;
}

const TOTAL = ruleOf("total-row").reason;

function sum(values: readonly number[]): number {
  return values.reduce((total, each) => total + each, 0);
}

function plain(count: number): string {
  return String(count).replace(/\B(?=(\d{3})+$)/g, ",");
}
