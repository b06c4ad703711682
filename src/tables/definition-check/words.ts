import { capital, counted, LEAST_BASE_OF_A_PERCENT } from "../../words/numbers";
import type { CheckedChoice, DefinitionCheck } from "./evaluate";
import { isShare } from "./figure";

/** What a check found, where it found it, and what its definitions rest on. */
export function checkNotes(check: DefinitionCheck): string[] {
  const { dimensions, results } = check;
  const { lowest, highest } = extremes(check);
  const say = formatOf(check);
  const empty = results.filter(({ value }) => value === null).length;
  const most = movesMost(check);
  return [
    checkSentence(check),
    `This run's own definitions give ${say(results[0]!)}: ${results[0]!.text}.`,
    `Lowest, ${say(lowest)}: ${lowest.text}.`,
    `Highest, ${say(highest)}: ${highest.text}.`,
    ...(most === null
      ? []
      : [`Moves it most, the others left as they are: ${most.about} (from ${most.said.join(" to ")}).`]),
    ...(empty === 0
      ? []
      : [`Under ${counted(empty)} of the choices nothing can be told, and they are not counted above.`]),
    ...dimensions.map(({ about, source }) => `The choices of ${about} come from these sources: ${source}.`),
    "No choice here is the right one for every question. Say with a figure which definitions it was made under.",
  ];
}

/** `Between 80% and 86% under all 48 defensible choices; whether checks older than 90 days count moves it most.` */
export function checkSentence(check: DefinitionCheck): string {
  const { lowest, highest } = extremes(check);
  const say = formatOf(check);
  const [from, to] = [say(lowest), say(highest)];
  const known = check.results.filter(({ value }) => value !== null).length;
  const under = `under ${known === check.results.length ? "all" : "the"} ${counted(known)} defensible choices`;
  const range = from === to ? capital(`${from} ${under}`) : `Between ${from} and ${to} ${under}`;
  const most = movesMost(check);
  return most === null ? `${range}; no choice alone moves it.` : `${range}; ${most.about} moves it most.`;
}

type Known = CheckedChoice & { readonly value: number };

function isKnown(each: CheckedChoice): each is Known {
  return each.value !== null;
}

/** The lowest and the highest; of several that are the same, the first. */
function extremes({ results }: Pick<DefinitionCheck, "results">): { readonly lowest: Known; readonly highest: Known } {
  const known = results.filter(isKnown);
  const best = (isBetter: (a: number, b: number) => boolean) =>
    known.reduce((found, each) => (isBetter(each.value, found.value) ? each : found));
  return { lowest: best((a, b) => a < b), highest: best((a, b) => a > b) };
}

/** The definition that moves the figure farthest when it alone is changed; null where none does. */
function movesMost(check: DefinitionCheck): { readonly about: string; readonly said: readonly string[] } | null {
  const say = formatOf(check);
  const alone = check.dimensions.map(({ about, options }, dimension) => {
    const results = check.results.filter(
      (each): each is Known =>
        isKnown(each) && each.combination.every((option, at) => at === dimension || option === 0),
    );
    const { lowest, highest } = extremes({ results });
    const said = [lowest, highest].map((each) => `${say(each)} with ${options[each.combination[dimension]!]!.text}`);
    return { about, said, spread: highest.value - lowest.value };
  });
  const most = alone.reduce((found, each) => (each.spread > found.spread ? each : found));
  return most.spread > 0 ? most : null;
}

/** How a figure is said: a share of fewer than 20 by its counts, ages with one decimal. */
function formatOf({ figure: { column }, results }: DefinitionCheck): (each: CheckedChoice) => string {
  const values = results.filter(isKnown).map(({ value }) => value);
  if (!isShare(column)) {
    const isWhole = values.every(Number.isInteger);
    return ({ value }) => (isWhole ? counted(value ?? 0) : (value ?? 0).toFixed(1));
  }
  const percents = values.map((value) => Math.round(100 * value));
  const digits = Math.min(...percents) === Math.max(...percents) ? 1 : 0;
  return (each) => (isSmall(each) ? smallShare(column, each) : `${(100 * (each.value ?? 0)).toFixed(digits)}%`);
}

function isSmall({ of }: CheckedChoice): boolean {
  return of !== null && of < LEAST_BASE_OF_A_PERCENT;
}

function smallShare(column: string, { value, of, count }: CheckedChoice): string {
  if (column !== "shareMet") return (value ?? 0).toFixed(2);
  return count === null ? `about ${Math.round((value ?? 0) * (of ?? 0))} of ${of}` : `${count} of ${of}`;
}

const MOST_ROWS = 16;
const MOST_DOTS = 60;
/** A tenth of a percent: no share of a program is known more finely. */
const LEAST_STEP_OF_A_SHARE = 0.001;

/** The choices over the values they give, lowest first. */
export interface DotPicture {
  readonly rows: readonly { readonly label: string; readonly dots: number; readonly isOwn: boolean }[];
  /** How many choices a dot stands for, at most. */
  readonly per: number;
}

/**
 * The choices as dots over the values they give, the row of the run's own marked. Where a row would be too long, a dot is
 * several choices.
 */
export function dotPicture(check: DefinitionCheck, mostDots = MOST_DOTS): DotPicture {
  const values = check.results.filter(isKnown).map(({ value }) => value);
  const [own] = values as [number];
  const least = isShare(check.figure.column) ? LEAST_STEP_OF_A_SHARE : 0;
  const step = Math.max(least, stepOf(Math.max(...values) - Math.min(...values)));
  const place = (value: number) => Math.floor(value / step + 1e-9);
  const places = values.map(place);
  const [first, last] = [Math.min(...places), Math.max(...places)];
  const counts = Array.from(
    { length: last - first + 1 },
    (_, at) => places.filter((each) => each === first + at).length,
  );
  const per = Math.max(1, Math.ceil(Math.max(...counts) / mostDots));
  const label = labelOf(check, step);
  const rows = counts.map((count, at) => ({
    label: label(first + at),
    dots: Math.ceil(count / per),
    isOwn: place(own) === first + at,
  }));
  return { rows, per };
}

/** The same as lines of text, the run's own as a filled circle. */
export function dotLines(check: DefinitionCheck): string[] {
  const { rows, per } = dotPicture(check);
  const width = Math.max(...rows.map(({ label }) => label.length));
  return [
    ...rows.map(({ label, dots, isOwn }) => {
      const others = "·".repeat(Math.max(0, dots - (isOwn ? 1 : 0)));
      return `${label.padStart(width)}  ${isOwn ? "●" : ""}${others}`.trimEnd();
    }),
    `● this run's own definitions${per === 1 ? "" : `; a dot is up to ${per} choices`}`,
  ];
}

/** 1, 2 or 5 times a power of ten, so that the lines are few. */
function stepOf(range: number): number {
  if (range === 0) return 0.01;
  const raw = range / (MOST_ROWS - 2);
  const power = 10 ** Math.floor(Math.log10(raw));
  return ([1, 2, 5].find((each) => each * power >= raw) ?? 10) * power;
}

/** The lower end of a line's values; from a small base no percent. */
function labelOf(check: DefinitionCheck, step: number): (place: number) => string {
  const isPercent = isShare(check.figure.column) && !isSmall(check.results[0]!);
  const unit = isPercent ? 100 : 1;
  const digits = Math.max(0, -Math.floor(Math.log10(step * unit) + 1e-9));
  return (place) => `${(place * step * unit).toFixed(digits)}${isPercent ? "%" : ""}`;
}
