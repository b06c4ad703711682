import type { Entry } from "./groups";
import type { ObservationRow, OracleInput, OracleRow, Result } from "./input";

const RESULTS: readonly Result[] = ["not met", "emerging", "met", "lost"];

/** METHOD.md, section 9: two named observers, one child, one skill, one day. Cohen (1960), Educ Psychol Meas 20:37-46. */
export function agreement(input: OracleInput, everFollowed: readonly Entry[]): OracleRow[] {
  const rows: OracleRow[] = [];
  for (const { skill } of input.skills) {
    const pairs: [Result, Result][] = [];
    for (const { person } of everFollowed) {
      const own = person.observations.filter((row) => row.skill === skill);
      for (const date of new Set(own.map((row) => row.date))) {
        pairs.push(...pairsOf(own.filter((row) => row.date === date)));
      }
    }
    if (pairs.length > 0) rows.push({ skill, pairs: pairs.length, ...kappaOf(pairs) });
  }
  return rows;
}

/** Every two observers; one who gave different results that day counts, like the day, as not met. */
function pairsOf(day: readonly ObservationRow[]): [Result, Result][] {
  const said = new Map<string, Result>();
  for (const { observer, result } of day) {
    if (!observer) continue;
    const before = said.get(observer);
    said.set(observer, before === undefined || before === result ? result : "not met");
  }
  const observers = [...said.keys()].sort();
  const pairs: [Result, Result][] = [];
  for (let first = 0; first < observers.length; first += 1) {
    for (let second = first + 1; second < observers.length; second += 1) {
      pairs.push([said.get(observers[first] ?? "") ?? "not met", said.get(observers[second] ?? "") ?? "not met"]);
    }
  }
  return pairs;
}

/** Chance agreement in whole numbers, over n squared, so that 1 is recognised exactly. */
function kappaOf(pairs: readonly (readonly [Result, Result])[]): { percent: number; kappa: number | null } {
  const n = pairs.length;
  const agreed = pairs.filter(([first, second]) => first === second).length;
  let chance = 0;
  for (const result of RESULTS) {
    chance +=
      pairs.filter(([first]) => first === result).length * pairs.filter(([, second]) => second === result).length;
  }
  const kappa = chance === n * n ? null : (agreed * n - chance) / (n * n - chance);
  return { percent: (agreed / n) * 100, kappa };
}
