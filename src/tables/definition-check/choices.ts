import type { CorrectionRule } from "../../age/correction";
import { SETTING_CATALOGUE } from "../../settings/catalogue";
import type { Settings } from "../../settings/settings";
import type { CheckedTable } from "./figure";

/** Every definition that a figure can be made under. */
export interface Choice {
  readonly correction: CorrectionRule;
  readonly recheckDays: number;
  readonly disagreement: Settings["disagreement"];
  readonly met: "observation" | "estimate";
  /** The edges of the figure's age group: two, or one where it is open; none where the table has no age groups. */
  readonly edges: readonly number[];
}

/** One definition that can be chosen in several ways, the run's own first. */
export interface Dimension {
  /** To follow a figure and "moves it most". */
  readonly about: string;
  readonly source: string;
  readonly options: readonly Option[];
}

export interface Option {
  /** As a setting is written. */
  readonly text: string;
  readonly set: Partial<Choice>;
}

const BY_TABLE: Readonly<Record<CheckedTable, readonly (keyof typeof DIMENSIONS)[]>> = {
  "met-by-band": ["correction", "recheck", "disagreement", "met", "edges"],
  "met-by-band-left": ["correction", "recheck", "disagreement", "met", "edges"],
  "expected-by-now": ["correction", "recheck", "disagreement"],
  "age-when-met": ["correction", "disagreement"],
};

const DIMENSIONS = { correction, recheck, disagreement, met, edges };

/** The definitions that bear on a figure. */
export function dimensionsOf(table: CheckedTable, column: string, usual: Choice): Dimension[] {
  return BY_TABLE[table]
    .filter((name) => name !== "met" || column === "shareMet")
    .map((name) => DIMENSIONS[name](usual));
}

function correction({ correction: own }: Choice): Dimension {
  const belowDays = own.belowDays === 0 ? SETTING_CATALOGUE.correctBelow.usual : own.belowDays;
  const rules: readonly CorrectionRule[] = [
    own,
    { belowDays, untilMonths: 24, untilAge: "chronological" },
    { belowDays, untilMonths: 24, untilAge: "corrected" },
    { belowDays, untilMonths: Infinity, untilAge: "chronological" },
    { ...own, belowDays: 0 },
  ];
  return {
    about: "how long ages are corrected",
    source:
      "until 24 months: AAP, Pediatrics 2004;114:1362-1364; 24 corrected, always, never: common practice, no source",
    options: distinct(rules.map((rule) => ({ text: correctionText(rule), set: { correction: rule } }))),
  };
}

function correctionText(rule: CorrectionRule): string {
  if (rule.belowDays === 0) return "correctBelow never";
  return `correctUntil ${String(SETTING_CATALOGUE.correctUntil.entry.write(rule))}`;
}

function recheck({ recheckDays: own }: Choice): Dimension {
  const written = (days: number) => String(SETTING_CATALOGUE.recheck.entry.write(days));
  return {
    about: own === Infinity ? "whether old checks count" : `whether checks older than ${written(own)} days count`,
    source: "common practice, no source",
    options: distinct(
      [own, 60, 90, 120, Infinity].map((days) => ({ text: `recheck ${written(days)}`, set: { recheckDays: days } })),
    ),
  };
}

function disagreement({ disagreement: own }: Choice): Dimension {
  return {
    about: "how different results on one day count",
    source: "not met: the careful reading, our choice; met: common practice, no source",
    options: distinct(
      ([own, "not met", "met"] as const).map((each) => ({ text: `disagreement ${each}`, set: { disagreement: each } })),
    ),
  };
}

function met(): Dimension {
  return {
    about: "whether skills that were met between two checks are estimated",
    source:
      "by observation: the last check; by estimate: the curve of age-when-met (Turnbull, J R Stat Soc B 1976;38:290-295)",
    options: (["observation", "estimate"] as const).map((each) => ({ text: `met by ${each}`, set: { met: each } })),
  };
}

/** Each edge one month down or up; the due date, an edge of 0, moves up only. */
function edges({ edges: own }: Choice): Dimension {
  const moved = (edge: number) => (edge === 0 ? [0, 1] : [edge, edge - 1, edge + 1]);
  const [lower = [], upper] = own.map(moved);
  const pairs =
    upper === undefined ? lower.map((edge) => [edge]) : lower.flatMap((from) => upper.map((to) => [from, to]));
  const rising = pairs.filter(([from, to]) => to === undefined || from! < to);
  return {
    about: "where the age group begins and ends",
    source: "common practice, no source",
    options: rising.map((each) => ({ text: `edges ${each.join(", ")}`, set: { edges: each } })),
  };
}

function distinct(options: readonly Option[]): Option[] {
  return options.filter(({ text }, at) => options.findIndex((each) => each.text === text) === at);
}

/** One combination: the place of its option in every dimension. */
export type Combination = readonly number[];

/** Every combination, the usual one first. */
export function combinationsOf(dimensions: readonly Dimension[]): Combination[] {
  return dimensions.reduce<Combination[]>(
    (all, { options }) => all.flatMap((before) => options.map((_, at) => [...before, at])),
    [[]],
  );
}

export function choiceOf(dimensions: readonly Dimension[], combination: Combination, usual: Choice): Choice {
  return dimensions.reduce((choice, { options }, at) => ({ ...choice, ...options[combination[at]!]!.set }), usual);
}

/** `correctUntil 24; recheck 90; disagreement not met; met by observation; edges 12, 18`. */
export function choiceText(dimensions: readonly Dimension[], combination: Combination): string {
  return dimensions.map(({ options }, at) => options[combination[at]!]!.text).join("; ");
}
