import { benjaminiHochberg, holm } from "../statistics/multiplicity";
import { funnelLimit, observedExpected } from "../statistics/poisson";
import type { TableContext } from "./context";
import { referralNotes } from "./referrals-notes";
import { type Dimension, referralSlices, type Slice } from "./referrals-slices";
import type { Table, TableColumn, TableValue } from "./table";

const COLUMNS: readonly TableColumn[] = [
  { key: "dimension", label: "By", unit: "text" },
  { key: "value", label: "Value", unit: "text" },
  { key: "children", label: "Children in the program", unit: "children" },
  { key: "childMonths", label: "Child-months", unit: "child-months" },
  { key: "referrals", label: "Referrals", unit: "count" },
  { key: "childrenReferred", label: "Children referred", unit: "children" },
  { key: "per100ChildMonths", label: "Referrals per 100 child-months", unit: "per 100 child-months" },
  { key: "expected", label: "Expected at the program's rates by age", unit: "number" },
  { key: "ratio", label: "Observed / expected", unit: "number" },
  { key: "lower", label: "Lower limit", unit: "number" },
  { key: "upper", label: "Upper limit", unit: "number" },
  { key: "p", label: "p", unit: "number" },
  { key: "holm", label: "p, Holm", unit: "number" },
  { key: "bh", label: "p, Benjamini-Hochberg", unit: "number" },
  { key: "funnel95Lower", label: "Funnel 95%, lower", unit: "number" },
  { key: "funnel95Upper", label: "Funnel 95%, upper", unit: "number" },
  { key: "funnel998Lower", label: "Funnel 99.8%, lower", unit: "number" },
  { key: "funnel998Upper", label: "Funnel 99.8%, upper", unit: "number" },
];

const FUNNEL_SHARES = [0.025, 0.975, 0.001, 0.999] as const;

/** Table 4: who was referred, for how much time followed, against what the program's own rates by age give. */
export function referrals(context: TableContext): Table<"referrals"> {
  const found = referralSlices(context);
  const rows = [...found.slices].flatMap(([dimension, slices]) =>
    dimensionRows(dimension, slices, context.settings.level),
  );
  return {
    id: "referrals",
    title: "Referrals for the time children were in the program",
    population: "Children in the program on some day of the period, and the referrals made on such a day",
    columns: COLUMNS,
    rows,
    notes: referralNotes(found),
  };
}

function dimensionRows(dimension: Dimension, slices: readonly Slice[], level: number): TableValue[][] {
  const tests = slices.map(({ referrals: observed, expected }) =>
    expected === null ? null : observedExpected(observed, expected, level),
  );
  const strict = adjusted(tests, holm);
  const loose = adjusted(tests, benjaminiHochberg);
  return slices.map((slice, at) => [
    dimension,
    slice.value,
    slice.children,
    slice.childMonths,
    slice.referrals,
    slice.childrenReferred,
    slice.childMonths === 0 ? null : (100 * slice.referrals) / slice.childMonths,
    slice.expected,
    tests[at]?.ratio ?? null,
    tests[at]?.lower ?? null,
    tests[at]?.upper ?? null,
    tests[at]?.p ?? null,
    strict[at] as number | null,
    loose[at] as number | null,
    ...FUNNEL_SHARES.map((share) => (slice.expected === null ? null : funnelLimit(slice.expected, share))),
  ]);
}

/** Adjusted within the dimension, over the rows that have a p. */
function adjusted(
  tests: readonly ({ readonly p: number | null } | null)[],
  method: (p: readonly number[]) => number[],
): (number | null)[] {
  const given = tests.flatMap((test) => test?.p ?? []);
  const values = method(given);
  let next = 0;
  return tests.map((test) => (test === null || test.p === null ? null : (values[next++] as number)));
}
