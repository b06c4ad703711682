import type { Cohort } from "../cohort/cohort";
import { standardisedShare, type StratumShare } from "../statistics/standardise";
import { type ChildCounts, standardisedChange } from "../statistics/standardised-change";
import type { TableContext } from "./context";
import { LEAST_BASE_OF_A_PERCENT, shareInWords } from "../words/numbers";
import { type Sites, sitesOf } from "./referrals-counted";
import { childCounts, countQuarter, type Quarter, type QuarterCounts } from "./trend-quarters";

/** One share a quarter, in each site. */
type Strata = readonly (readonly StratumShare[])[];

/** Sites beside the pooled figures, area by area, and a warning for every area whose direction they reverse. */
export function siteNotes({ cohort, settings }: TableContext, quarters: readonly Quarter[]): string[] {
  const sites = sitesOf(cohort);
  if (sites === null) return ["Children has no column headed Site: sites cannot be compared."];
  if (sites.names.length < 2) return [];
  const counts = countsBySite(cohort, quarters, sites, settings.recheckDays);
  return [
    "Sites beside the program, first and last quarter in which every site named has an up-to-date check. Standardized: each site's share weighted by its up-to-date skill checks of all quarters together, so that children moving between sites do not look like a trend.",
    ...comparisons(cohort, quarters, sites, counts).flatMap((comparison) => [
      areaNote(besideEachOther(comparison, sites)),
      ...reversalNote({ cohort, settings }, comparison.area, sites, comparison),
    ]),
  ];
}

/** Skill checks met of an area, pooled and by site, in the first and the last quarter that can be compared. */
export interface SitesBeside {
  readonly area: string;
  readonly quarters: readonly [string, string];
  readonly pooled: readonly StratumShare[];
  readonly sites: readonly { readonly name: string; readonly shares: readonly StratumShare[] }[];
  /** Null where the pooled checks of either quarter are too few for a percent. */
  readonly standardised: readonly number[] | null;
}

/** None where there are fewer than two sites. */
export function sitesBeside({ cohort, settings }: TableContext, quarters: readonly Quarter[]): readonly SitesBeside[] {
  const sites = sitesOf(cohort);
  if (sites === null || sites.names.length < 2) return [];
  const counts = countsBySite(cohort, quarters, sites, settings.recheckDays);
  return comparisons(cohort, quarters, sites, counts).map((comparison) => besideEachOther(comparison, sites));
}

interface Comparison {
  readonly area: string;
  readonly strata: AreaStrata;
  readonly compared: readonly [number, number];
  readonly spans: readonly [Quarter, Quarter];
}

function comparisons(
  cohort: Cohort,
  quarters: readonly Quarter[],
  sites: Sites,
  counts: readonly QuarterCounts[],
): Comparison[] {
  const areas = [...new Set(cohort.skills.map(({ area }) => area))];
  return areas.flatMap((area) => {
    const strata = areaStrata(cohort, area, sites, counts);
    const compared = comparedQuarters(strata);
    if (compared === null) return [];
    const spans = compared.map((at) => quarters[at] as Quarter) as [Quarter, Quarter];
    return [{ area, strata, compared, spans }];
  });
}

/** The first and the last quarter in which every site named has somebody assessed; null where there are no two such. */
function comparedQuarters({ named, standardised }: AreaStrata): [number, number] | null {
  const whole = standardised.flatMap((share, at) => (share === null ? [] : [at]));
  const [first, last] = [whole[0], whole.at(-1)];
  return named.length < 2 || first === undefined || last === undefined || first === last ? null : [first, last];
}

function besideEachOther(
  { area, strata: { named, used, standardised }, compared, spans }: Comparison,
  sites: Sites,
): SitesBeside {
  const pooled = compared.map((at) => {
    const shares = used.map((points) => points[at] as StratumShare);
    return { count: sum(shares.map(({ count }) => count)), of: sum(shares.map(({ of }) => of)) };
  });
  return {
    area,
    quarters: [spans[0].label, spans[1].label],
    pooled,
    sites: named.map((site, row) => ({
      name: nameOf(sites, site),
      shares: compared.map((at) => used[row]![at] as StratumShare),
    })),
    standardised: pooled.some(({ of }) => of < LEAST_BASE_OF_A_PERCENT)
      ? null
      : compared.map((at) => standardised[at] as number),
  };
}

function areaNote({ area, quarters, pooled, sites, standardised }: SitesBeside): string {
  const change = (shares: readonly StratumShare[]) =>
    shares.map(({ count, of }) => shareInWords(count, of)).join(" to ");
  const weighted = standardised === null ? "" : `, standardized ${standardised.map(percent).join(" to ")}`;
  const bySite = sites.map(({ name, shares }) => `${name} ${change(shares)}`).join("; ");
  return `${area} (skill checks), ${quarters[0]} to ${quarters[1]}: pooled ${change(pooled)}${weighted}; ${bySite}.`;
}

type AreaStrata = ReturnType<typeof areaStrata>;

/** The sites of an area that have somebody assessed in some quarter, and their share standardised in each quarter. */
function areaStrata(cohort: Cohort, area: string, sites: Sites, counts: readonly QuarterCounts[]) {
  const skills = cohort.skills.flatMap((skill, at) => (skill.area === area ? [at] : []));
  const strata = strataOf(cohort, counts, sites, skills);
  const named = strata.flatMap((points, site) => (points.some(({ of }) => of > 0) ? [site] : []));
  const used = named.map((site) => strata[site] as readonly StratumShare[]);
  const weights = used.map((points) => sum(points.map(({ of }) => of)));
  const standardised = counts.map((_, at) =>
    standardisedShare(
      used.map((points) => points[at] as StratumShare),
      weights,
    ),
  );
  return { named, used, weights, standardised };
}

function countsBySite(cohort: Cohort, quarters: readonly Quarter[], sites: Sites, recheckDays: number) {
  return quarters.map((quarter) => countQuarter(cohort, quarter, sites.ofEnrolment, sites.names.length, recheckDays));
}

/** Fewer children than this at a site on either day, and no limits of a change can be trusted (our choice). */
const LEAST_CHILDREN = 10;
const REVERSAL_LEVEL = 0.95;

/** Warns where pooled and standardized share go opposite ways, and the standardized change is more than chance. */
function reversalNote(
  { cohort, settings }: Pick<TableContext, "cohort" | "settings">,
  area: string,
  sites: Sites,
  { strata: { named, used, weights }, compared, spans }: Comparison,
): string[] {
  const pooled = pooledShare(used, compared[1]) - pooledShare(used, compared[0]);
  const children = childCounts(cohort, spans, sites.ofEnrolment, named, area, settings.recheckDays);
  const change = hasEnough(children, named.length) ? standardisedChange(children, weights, REVERSAL_LEVEL) : null;
  if (change === null || pooled * change.change >= 0 || change.lower * change.upper <= 0) return [];
  const word = (by: number) => `${by > 0 ? "rises" : "falls"} by ${points(Math.abs(by))}`;
  return [
    `Warning: ${area}, ${spans[0].label} to ${spans[1].label}: the share met ${word(pooled)} points when sites are pooled, and ${word(change.change)} points when sites are standardized (95% confidence interval of the change ${points(change.lower)} to ${points(change.upper)} points). The pooled share shows a change in which site the children come from; read the sites.`,
  ];
}

function hasEnough(children: readonly (readonly ChildCounts[])[], strata: number): boolean {
  const all = children.flat();
  return Array.from({ length: strata }, (_, stratum) => all.filter((each) => each.stratum === stratum)).every((own) =>
    (["before", "after"] as const).every((date) => own.filter((each) => each[date].of > 0).length >= LEAST_CHILDREN),
  );
}

function pooledShare(used: Strata, at: number): number {
  const shares = used.map((each) => each[at] as StratumShare);
  return sum(shares.map(({ count }) => count)) / sum(shares.map(({ of }) => of));
}

/** `-5.4`, with a true minus. */
function points(share: number): string {
  return (100 * share).toFixed(1).replace("-", "\u2212");
}

function strataOf(
  cohort: Cohort,
  counts: readonly QuarterCounts[],
  { names }: Sites,
  skills: readonly number[],
): Strata {
  return names.map((_, site) =>
    counts.map((quarter) => {
      const cells = skills.map((skill) => quarter[site * cohort.skills.length + skill]!);
      return { count: sum(cells.map(({ met }) => met)), of: sum(cells.map(({ assessed }) => assessed)) };
    }),
  );
}

function nameOf({ names }: Sites, site: number): string {
  return names[site] === "" ? "site not recorded" : (names[site] as string);
}

function percent(share: number): string {
  return `${(100 * share).toFixed(1)}%`;
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
