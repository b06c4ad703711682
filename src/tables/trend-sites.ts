import type { Cohort } from "../cohort/cohort";
import { standardisedShare } from "../statistics/standardise";
import { commonSlope, type TrendPoint, trendSlope } from "../statistics/trend";
import type { TableContext } from "./context";
import { shareInWords } from "../words/numbers";
import { type Sites, sitesOf } from "./referrals-counted";
import { countQuarter, type Quarter, type QuarterCounts } from "./trend-quarters";

/** One point a quarter, in each site. */
type Strata = readonly (readonly TrendPoint[])[];

/** Sites beside the pooled figures, area by area, and a warning for every skill whose direction they reverse. */
export function siteNotes({ cohort, settings }: TableContext, quarters: readonly Quarter[]): string[] {
  const sites = sitesOf(cohort);
  if (sites === null) return ["Children has no column headed Site: sites cannot be told apart."];
  if (sites.names.length < 2) return [];
  const counts = countsBySite(cohort, quarters, sites, settings.recheckDays);
  const areas = [...new Set(cohort.skills.map(({ area }) => area))];
  return [
    "Sites beside the program, first and last quarter in which every site named has somebody assessed. Standardised: each site's share weighted by its assessed children (child-skills for an area) of all quarters together, so that a change in which site the children come from is no trend.",
    ...areas.flatMap((area) => areaNote(cohort, area, sites, quarters, counts)),
    ...cohort.skills.flatMap(({ id }, skill) => reversalNote(id, strataOf(cohort, counts, sites, [skill]), sites)),
  ];
}

function areaNote(
  cohort: Cohort,
  area: string,
  sites: Sites,
  quarters: readonly Quarter[],
  counts: readonly QuarterCounts[],
): string[] {
  const { named, used, standardised } = areaStrata(cohort, area, sites, counts);
  const whole = quarters.flatMap((_, at) => (standardised[at] === null ? [] : [at]));
  const [first, last] = [whole[0], whole.at(-1)];
  if (named.length < 2 || first === undefined || last === undefined || first === last) return [];
  const change = (inWords: (at: number) => string) => [first, last].map(inWords).join(" to ");
  const pooled = change((at) => counted(used.map((points) => points[at] as TrendPoint)));
  const bySite = named.map((site, row) => `${nameOf(sites, site)} ${change((at) => counted([used[row]![at]!]))}`);
  return [
    `${area} (child-skills), ${quarters[first]!.label} to ${quarters[last]!.label}: pooled ${pooled}, standardised ${change((at) => percent(standardised[at] as number))}; ${bySite.join("; ")}.`,
  ];
}

/** The sites of an area that have somebody assessed in some quarter, and their share standardised in each quarter. */
function areaStrata(cohort: Cohort, area: string, sites: Sites, counts: readonly QuarterCounts[]) {
  const skills = cohort.skills.flatMap((skill, at) => (skill.area === area ? [at] : []));
  const strata = strataOf(cohort, counts, sites, skills);
  const named = strata.flatMap((points, site) => (points.some(({ of }) => of > 0) ? [site] : []));
  const used = named.map((site) => strata[site] as readonly TrendPoint[]);
  const weights = used.map((points) => sum(points.map(({ of }) => of)));
  const standardised = counts.map((_, at) =>
    standardisedShare(
      used.map((points) => points[at] as TrendPoint),
      weights,
    ),
  );
  return { named, used, standardised };
}

/** Of each area, the share in each quarter standardised over sites; null where a site has nobody assessed. */
export type StandardisedShares = ReadonlyMap<string, readonly (number | null)[]>;

/** None where there are fewer than two sites: there is nothing to stratify. */
export function standardisedByArea(
  { cohort, settings }: TableContext,
  quarters: readonly Quarter[],
): StandardisedShares {
  const sites = sitesOf(cohort);
  if (sites === null || sites.names.length < 2) return new Map();
  const counts = countsBySite(cohort, quarters, sites, settings.recheckDays);
  const areas = [...new Set(cohort.skills.map(({ area }) => area))];
  return new Map(
    areas.flatMap((area) => {
      const { named, standardised } = areaStrata(cohort, area, sites, counts);
      return named.length < 2 ? [] : [[area, standardised] as const];
    }),
  );
}

function countsBySite(cohort: Cohort, quarters: readonly Quarter[], sites: Sites, recheckDays: number) {
  return quarters.map((quarter) => countQuarter(cohort, quarter, sites.ofEnrolment, sites.names.length, recheckDays));
}

function reversalNote(skill: string, strata: Strata, sites: Sites): string[] {
  const pooled = trendSlope(strata.flat());
  const within = commonSlope(strata);
  if (pooled === null || within === null || tenthsOfPoints(pooled) * tenthsOfPoints(within) >= 0) return [];
  const word = (slope: number) => `${slope > 0 ? "rises" : "falls"} by ${(100 * Math.abs(slope)).toFixed(1)} points`;
  return [
    `Warning: ${skill} ${word(pooled)} a quarter when sites are pooled, and ${word(within)} a quarter within sites (${strata.length} sites: ${sites.names.map((_, site) => nameOf(sites, site)).join(", ")}). The pooled figures show a change in which site the children come from; read the sites.`,
  ];
}

/** What is smaller than a tenth of a point is no direction. */
function tenthsOfPoints(slope: number): number {
  return Math.round(1000 * slope);
}

function strataOf(
  cohort: Cohort,
  counts: readonly QuarterCounts[],
  { names }: Sites,
  skills: readonly number[],
): Strata {
  return names.map((_, site) =>
    counts.map((quarter, score) => {
      const cells = skills.map((skill) => quarter[site * cohort.skills.length + skill]!);
      return { score, count: sum(cells.map(({ met }) => met)), of: sum(cells.map(({ assessed }) => assessed)) };
    }),
  );
}

/** `78.0% (273 of 350)`. */
function counted(points: readonly TrendPoint[]): string {
  return shareInWords(sum(points.map((point) => point.count)), sum(points.map((point) => point.of)));
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
