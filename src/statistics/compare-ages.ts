import { type AgeColumns, allExactOrLater, refuseBadAges, watchedAges } from "./age-kinds";
import { type Comparison, type GroupLabel, groupsOf, notCompared } from "./groups";
import { intervalLogRank } from "./interval-log-rank";
import { logRank } from "./log-rank";

/**
 * Whether groups meet a skill at different ages: the log-rank test where every age is exact or later than the last
 * look, else its score form for intervals (METHOD.md, section 6).
 *
 * @throws {RangeError} when the columns differ in length, a row is not an age, or an entry stands beside intervals
 */
export function compareAges(columns: AgeColumns, group: readonly GroupLabel[]): Comparison {
  refuseBadAges(columns);
  groupsOf(group, columns.after.length);
  const exact = allExactOrLater(columns);
  if (columns.by.every((end) => end === Infinity)) {
    return notCompared("log-rank", "no child was seen with the skill");
  }
  return exact ? logRank(watchedAges(columns), group) : intervalLogRank(columns.after, columns.by, group);
}
