import { inCells } from "./answer";
import { comparisonCells, curveCells, percentileCells, sharesOf } from "./convert/age-answers";
import { levelOf, seedOf } from "./convert/options";
import { remembered } from "./memo";

/**
 * The age by which a share of children has met a skill, though visits only bracket the day.
 * @customfunction AGEWHENMET
 * @cancelable
 * @param after Ages at the last check without the skill; blank means 0
 * @param by Ages at the check that first saw it; blank where never seen, equal to after where the day is known
 * @param [shares] Shares of the children; 0.1, 0.25, 0.5, 0.75, 0.9 when left out
 * @param [level] Confidence level; 0.95 when left out
 * @param [entry] Ages from which children were watched, where every age is exact or not met
 * @param [seed] Starts the random draws behind the limits; 20240229 when left out
 * @returns Share, age, lower and upper limit in the unit given, and the method
 */
export function ageWhenMet(
  after: any[][],
  by: any[][],
  shares?: any[][],
  level?: any,
  entry?: any[][],
  seed?: any,
): any[][] {
  return inCells(() =>
    remembered("AGEWHENMET", [after, by, shares, level, entry, seed], () =>
      percentileCells({ after, by, entry }, { shares: sharesOf(shares), level: levelOf(level), seed: seedOf(seed) }),
    ),
  );
}

/**
 * The share of children who have met a skill, as a curve: a row for each stretch of ages in which some met it.
 * @customfunction ATTAINMENTCURVE
 * @cancelable
 * @param after Ages at the last check without the skill; blank means 0
 * @param by Ages at the check that first saw it; blank where never seen, equal to after where the day is known
 * @param [entry] Ages from which children were watched, where every age is exact or not met
 * @returns From, to, share who met it in between, and share met by then; to is blank after the last check
 */
export function attainmentCurve(after: any[][], by: any[][], entry?: any[][]): any[][] {
  return inCells(() => remembered("ATTAINMENTCURVE", [after, by, entry], () => curveCells({ after, by, entry })));
}

/**
 * Whether groups of children meet a skill at different ages.
 * @customfunction COMPAREAGES
 * @cancelable
 * @param after Ages at the last check without the skill; blank means 0
 * @param by Ages at the check that first saw it; blank where never seen, equal to after where the day is known
 * @param group The group of each child, such as a site
 * @param [entry] Ages from which children were watched, where every age is exact or not met
 * @returns Chi-squared, degrees of freedom, p, and the method
 */
export function compareAges(after: any[][], by: any[][], group: any[][], entry?: any[][]): any[][] {
  return inCells(() =>
    remembered("COMPAREAGES", [after, by, group, entry], () => comparisonCells({ after, by, group, entry })),
  );
}
