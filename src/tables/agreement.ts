import { agreement as agreementOf } from "../statistics/agreement";
import { RESULT, RESULT_LABELS } from "../records/records";
import type { Cohort } from "../cohort/cohort";
import { type TableContext, groupOfEverFollowed } from "./context";
import type { Table, TableColumn, TableValue } from "./table";

const COLUMNS: readonly TableColumn[] = [
  { key: "skill", label: "Skill", unit: "text" },
  { key: "pairs", label: "Pairs of observers", unit: "pairs" },
  { key: "percent", label: "Agreement", unit: "percent" },
  { key: "kappa", label: "Kappa", unit: "number" },
];

/** Results of two observers of one child, skill and day, as codes of RESULT. */
interface Pairs {
  readonly first: number[];
  readonly second: number[];
}

/** How often two named observers who looked on the same day wrote the same result, per skill. */
export function agreement(context: TableContext): Table<"agreement"> {
  const { cohort } = context;
  const groupOf = groupOfEverFollowed(context);
  const pairs = cohort.skills.map((): Pairs => ({ first: [], second: [] }));
  cohort.ids.forEach((_, child) => {
    if ((groupOf[child] as number) >= 0) collectPairs(context, child, pairs);
  });
  return {
    id: "agreement",
    title: "How often two observers agreed",
    population: "Children ever in the program, on days when two named observers checked the same skill",
    columns: COLUMNS,
    rows: cohort.skills.flatMap((skill, index) => agreementRow(skill.id, pairs[index] as Pairs)),
    notes: [
      "Every two different named observers of one child, skill and day form a pair; results are met, emerging, not met, lost. Kappa is Cohen's; it is empty where chance alone would make every pair agree.",
    ],
  };
}

function agreementRow(skill: string, pairs: Pairs): TableValue[][] {
  if (pairs.first.length === 0) return [];
  const labels = (codes: readonly number[]) => codes.map((code) => RESULT_LABELS[code] as string);
  const result = agreementOf(labels(pairs.first), labels(pairs.second));
  return [[skill, result.n, result.percent, result.kappa]];
}

function collectPairs({ cohort, asOf }: TableContext, child: number, pairs: Pairs[]): void {
  const byDayAndSkill = new Map<string, Map<number, number>>();
  const { looks } = cohort;
  for (let at = looks.offsets[child] as number; at < (looks.offsets[child + 1] as number); at += 1) {
    if ((looks.day[at] as number) > asOf || (looks.observer[at] as number) < 0) continue;
    const key = `${looks.day[at]} ${looks.skill[at]}`;
    const results = byDayAndSkill.get(key) ?? new Map<number, number>();
    byDayAndSkill.set(key, results);
    const observer = looks.observer[at] as number;
    const before = results.get(observer);
    const result = looks.result[at] as number;
    results.set(observer, before === undefined || before === result ? result : RESULT.notMet);
  }
  for (const [key, results] of byDayAndSkill) {
    if (results.size > 1) addPairs(cohort, results, pairs[Number(key.split(" ")[1])] as Pairs);
  }
}

/** The first of a pair is the observer whose code sorts first by code unit. */
function addPairs(cohort: Cohort, results: ReadonlyMap<number, number>, to: Pairs): void {
  const codeOf = (observer: number) => cohort.observers[observer] as string;
  const sorted = [...results].sort(([a], [b]) => (codeOf(a) < codeOf(b) ? -1 : 1));
  sorted.forEach(([, first], at) => {
    for (const [, second] of sorted.slice(at + 1)) {
      to.first.push(first);
      to.second.push(second);
    }
  });
}
