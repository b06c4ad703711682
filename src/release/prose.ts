import { dayFromIso, calendarOf } from "../age/day";
import { plural } from "../tables/words";
import { type Figure, hiddenFigures, shownFigures } from "./prose-figures";
import { hasBothNumbers, numbersIn, type ProseNumber, sentencesIn } from "./prose-numbers";
import type { PreparedRelease } from "./prepared";
import { isoInWords } from "./words/days";

export { hiddenFigures };

export interface ProseFinding {
  /** `leak` first of all; `advice` is only that. */
  readonly kind: "leak" | "not found" | "denominator" | "period" | "advice" | "found";
  /** Counted from 1; null for the text as a whole. */
  readonly sentence: number | null;
  /** The number or word as written; "" for the text as a whole. */
  readonly written: string;
  readonly message: string;
}

type Release = Pick<PreparedRelease, "asOf" | "from" | "rule" | "tables">;

/**
 * A text that is to go out with a release, held against it: every number, the denominator of every percent, the period,
 * and, as advice only, words that claim a cause.
 *
 * @param hidden - the true numbers behind what is held back, from inside the program
 */
export function checkProse(prose: string, release: Release, hidden: readonly Figure[]): ProseFinding[] {
  const shown = release.tables.flatMap(shownFigures);
  const findings = sentencesIn(prose).flatMap((text, index) => [
    ...numbersIn(text).map((number) => judged(number, index + 1, shown, hidden, release)),
    ...denominator(text, index + 1),
    ...causes(text, index + 1),
  ]);
  const all = [...findings, ...period(prose, findings, release)];
  return ORDER.flatMap((kind) => all.filter((finding) => finding.kind === kind));
}

/** The findings in lines for the terminal. */
export function proseLines(findings: readonly ProseFinding[]): string[] {
  return findings.map(({ kind, sentence, written, message }) => {
    const where = [...(sentence === null ? [] : [`sentence ${sentence}`]), ...(written === "" ? [] : [`"${written}"`])];
    return `${kind}${where.length === 0 ? "" : ` (${where.join(", ")})`}: ${message}`;
  });
}

const ORDER: readonly ProseFinding["kind"][] = ["leak", "not found", "denominator", "period", "advice", "found"];

function judged(
  number: ProseNumber,
  sentence: number,
  shown: readonly Figure[],
  hidden: readonly Figure[],
  { rule: { minimumCell } }: Release,
): ProseFinding {
  const said = { sentence, written: number.written };
  const found = shown.filter((figure) => isSame(number, figure));
  if (found[0]) {
    const others = found.length === 1 ? "" : `, and in ${plural(found.length - 1, "other place", "other places")}`;
    return { kind: "found", ...said, message: `it stands in ${found[0].place}${others}.` };
  }
  const held = hidden.find((figure) => isSame(number, figure));
  if (number.kind === "age") return { kind: "found", ...said, message: "an age or a time: not checked." };
  if (number.ofPeople && number.value >= 1 && number.value < minimumCell) {
    const rule = `a count of 1 to ${minimumCell - 1} may not leave under this rule: take it out, or write "fewer than ${minimumCell}" only where the table shows as much.`;
    return { kind: "leak", ...said, message: rule };
  }
  if (held) {
    const message = `the release does not show it, and it is what ${held.place} holds back: take it out, or write about a figure that is shown.`;
    return { kind: "leak", ...said, message };
  }
  return {
    kind: "not found",
    ...said,
    message: "no table of the release shows it: correct it, or say where it comes from.",
  };
}

function isSame({ kind, value, decimals }: ProseNumber, figure: Figure): boolean {
  const isNear = Math.abs(figure.value - value) <= 0.5 * 10 ** -decimals + 1e-9;
  switch (kind) {
    case "percent":
      return figure.kind === "share" && isNear;
    case "age":
      return figure.kind === "months" && isNear;
    case "count":
      return figure.kind === "count" && figure.value === value;
    case "decimal":
      return (figure.kind !== "share" && isNear) || (figure.kind === "share" && isShareOf(value, decimals, figure));
  }
}

/** A share may be written as 0.62 too. */
function isShareOf(value: number, decimals: number, { value: percent }: Figure): boolean {
  return Math.abs(percent / 100 - value) <= 0.5 * 10 ** -decimals + 1e-9;
}

function denominator(text: string, sentence: number): ProseFinding[] {
  const percent = numbersIn(text).find(({ kind }) => kind === "percent");
  if (!percent || hasBothNumbers(text)) return [];
  const message = "a percent never stands without its numbers: write how many of how many in the same sentence.";
  return [{ kind: "denominator", sentence, written: percent.written, message }];
}

/** Wording that a table cannot carry: it counts, and compares nothing with what would have been. */
const CAUSES =
  /\b(caus(?:e[sd]?|ing)|led to|leads to|result(?:s|ed) in|due to|because of|thanks to|as a result of|prove[sdn]?|prevent(?:s|ed)?|effect(?:s|ive)?|impact(?:s|ed)?|improved?|reduced?|increased?)\b/gi;

function causes(text: string, sentence: number): ProseFinding[] {
  const message = "it can be read as a claim of cause, which these tables cannot carry; say what was counted instead.";
  return [...text.matchAll(CAUSES)].map(([written]) => ({ kind: "advice", sentence, written, message }));
}

function period(prose: string, findings: readonly ProseFinding[], { asOf, from }: Release): ProseFinding[] {
  const hasFigures = findings.some(({ kind }) => kind !== "advice");
  if (!hasFigures || mentions(asOf).some((each) => prose.toLowerCase().includes(each))) return [];
  const message = `the text does not say for when its figures are true: name the period, ${isoInWords(from)} to ${isoInWords(asOf)}.`;
  return [{ kind: "period", sentence: null, written: "", message }];
}

/** Ways to name the day or its quarter, in small letters. */
function mentions(iso: string): string[] {
  const day = dayFromIso(iso);
  if (day === null) throw new RangeError("checkProse: no ISO date");
  const { year, month } = calendarOf(day);
  const [date = "", name = ""] = isoInWords(iso).toLowerCase().split(" ");
  const quarter = Math.ceil(month / 3);
  const ordinal = ["first", "second", "third", "fourth"][quarter - 1] as string;
  return [
    iso,
    `${name} ${year}`,
    `${name} ${date}, ${year}`,
    `${year}-q${quarter}`,
    `q${quarter} ${year}`,
    `q${quarter} of ${year}`,
    `${ordinal} quarter of ${year}`,
    `${ordinal} quarter ${year}`,
  ];
}
