/** Child-months and referrals counted one day at a time. METHOD.md, section 6. */
import { ageMonths, bandOf } from "./ages";
import { addDays } from "./calendar";
import { enrolmentInForce, type Person, peopleOf } from "./following";
import type { OracleInput, OracleRow } from "./input";

export interface ReferralRow {
  readonly child: string;
  readonly referred: string;
  readonly areas: readonly string[];
  readonly from: string | null;
}

/** One day on which one child was followed. */
interface ChildDay {
  readonly child: string;
  readonly day: string;
  readonly site: string;
  readonly band: string;
  readonly quarter: string;
}

interface Made extends ChildDay {
  readonly areas: readonly string[];
  readonly source: string;
}

const DAYS_A_MONTH = 30.4375;

/** Every row of the table that can be counted, by dimension and value: children, childMonths, referrals, childrenReferred, expected. */
export function oracleReferrals(input: OracleInput, referrals: readonly ReferralRow[]): OracleRow[] {
  const days = peopleOf(input).flatMap((person) => childDays(person, input));
  const made = madeOnFollowedDays(referrals, days);
  const areas = [...new Set([...input.skills.map(({ area }) => area), ...made.flatMap((each) => each.areas)])];
  const valuesOf = (of: (day: ChildDay) => string) => [...new Set(days.map(of))];
  const rates = (some: readonly Made[]) => (day: ChildDay) =>
    some.filter(({ band }) => band === day.band).length / days.filter(({ band }) => band === day.band).length;
  const overall = () => made.length / days.length;
  const row = (
    dimension: string,
    value: string,
    time: readonly ChildDay[],
    some: readonly Made[],
    rate: ((day: ChildDay) => number) | null,
  ): OracleRow => ({
    dimension,
    value,
    children: new Set(time.map(({ child }) => child)).size,
    childMonths: time.length / DAYS_A_MONTH,
    referrals: some.length,
    childrenReferred: new Set(some.map(({ child }) => child)).size,
    expected: rate === null ? null : expectedOf(time, rate),
  });
  const along = (dimension: string, of: (day: ChildDay) => string, rate: (day: ChildDay) => number) =>
    valuesOf(of).map((value) =>
      row(
        dimension,
        value,
        days.filter((day) => of(day) === value),
        made.filter((each) => of(each) === value),
        rate,
      ),
    );
  const inArea = (area: string) => made.filter((each) => each.areas.includes(area));
  return [
    ...along("site", ({ site }) => site, rates(made)),
    ...areas.map((area) => row("area", area, days, inArea(area), null)),
    ...along("band", ({ band }) => band, overall),
    ...along("quarter", ({ quarter }) => quarter, rates(made)),
    ...[...new Set(made.map(({ source }) => source))].map((source) =>
      row(
        "source",
        source,
        days,
        made.filter((each) => each.source === source),
        null,
      ),
    ),
    ...valuesOf(({ site }) => site).flatMap((site) =>
      areas.map((area) =>
        row(
          "site and area",
          `${site} / ${area}`,
          days.filter((day) => day.site === site),
          inArea(area).filter((each) => each.site === site),
          rates(inArea(area)),
        ),
      ),
    ),
  ];
}

/** Days of one band share a rate, so that it is asked for once a band. */
function expectedOf(time: readonly ChildDay[], rate: (day: ChildDay) => number): number {
  return [...new Set(time.map(({ band }) => band))].reduce((sum, band) => {
    const inBand = time.filter((day) => day.band === band);
    return sum + inBand.length * rate(inBand[0] as ChildDay);
  }, 0);
}

function childDays(person: Person, input: OracleInput): ChildDay[] {
  const { settings } = input;
  const days: ChildDay[] = [];
  for (let day = settings.from ?? settings.asOf; day <= settings.asOf; day = addDays(day, 1)) {
    const enrolment = enrolmentInForce(person, day);
    if (enrolment === null) continue;
    const band = bandOf(ageMonths(person, "corrected", settings, day), settings.edges);
    days.push({ child: person.id, day, site: enrolment.Site, band, quarter: quarterOf(day) });
  }
  return days;
}

function madeOnFollowedDays(referrals: readonly ReferralRow[], days: readonly ChildDay[]): Made[] {
  const byKey = new Map(days.map((day) => [`${day.child} ${day.day}`, day]));
  const once = [...new Map(referrals.map((each) => [JSON.stringify(each), each])).values()];
  return once.flatMap((each) => {
    const day = byKey.get(`${each.child} ${each.referred}`);
    return day === undefined ? [] : [{ ...day, areas: each.areas, source: each.from ?? "" }];
  });
}

function quarterOf(day: string): string {
  const [year, month] = day.split("-");
  return `${year}-Q${["01", "02", "03"].includes(month ?? "") ? 1 : ["04", "05", "06"].includes(month ?? "") ? 2 : ["07", "08", "09"].includes(month ?? "") ? 3 : 4}`;
}
