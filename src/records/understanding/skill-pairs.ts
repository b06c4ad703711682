import { headingKey } from "../cells/words";
import { DAY_OF_SKILL } from "../corrections/settled";
import { plainWords } from "../headings/likely";
import type { ContentKind, HeadingSeen } from "./understanding";

/** One such pair alone may be chance. */
const FEWEST_PAIRS = 2;
const HOLDS_RESULTS: readonly ContentKind[] = ["results", "yes or no", "scores", "few words"];
const OF_DAYS = /\s+(last\s+)?(date|day|when|on|seen|seen on|checked|checked on|date seen|date checked|fecha)$/;
const OF_RESULTS = /\s+(status|result|score|level|code|rating|resultado|estado)$/;

/**
 * Two columns for each skill, the day and the result: below one heading that spans both ("Rolls over": Date, Status), or side by side
 * under headings such as "Rolls over date" and "Rolls over". Each heading as it is taken; empty where the sheet is not so.
 */
export function skillPairs(headings: readonly HeadingSeen[]): ReadonlyMap<HeadingSeen, HeadingSeen> {
  const pairs = new Map<string, { skill: string; days: HeadingSeen[]; results: HeadingSeen[] }>();
  for (const each of headings) {
    const isDays = each.content === "dates";
    if (!isDays && !HOLDS_RESULTS.includes(each.content)) continue;
    const skill = each.above === "" ? baseOf(each.heading, isDays) : each.above;
    const key = headingKey(skill);
    const pair = pairs.get(key) ?? { skill, days: [], results: [] };
    (isDays ? pair.days : pair.results).push(each);
    pairs.set(key, isDays ? pair : { ...pair, skill });
  }
  const whole = [...pairs.values()].filter(({ days, results }) => days.length === 1 && results.length === 1);
  if (whole.length < FEWEST_PAIRS) return new Map();
  return new Map(
    whole.flatMap(({ skill, days, results }): [HeadingSeen, HeadingSeen][] => [
      ...days.map((each): [HeadingSeen, HeadingSeen] => [each, { ...each, means: DAY_OF_SKILL, skill }]),
      ...results.map((each): [HeadingSeen, HeadingSeen] => [each, { ...each, means: null, skill }]),
    ]),
  );
}

/** "Rolls over" of "Rolls over date" and of "Rolls over - status"; the heading as it is written where nothing is added. */
function baseOf(heading: string, isDays: boolean): string {
  const words = plainWords(heading);
  const base = words.replace(isDays ? OF_DAYS : OF_RESULTS, "");
  if (base === words) return heading;
  const wanted = base.replaceAll(" ", "").length;
  let letters = 0;
  for (let end = 0; end < heading.length; end += 1) {
    if (/[\p{L}\p{N}]/u.test(heading.charAt(end))) letters += 1;
    if (letters === wanted) return heading.slice(0, end + 1);
  }
  return heading;
}
