/** From a smaller base no text gives a percent: common practice, no source; 20 is the project's choice. */
const LEAST = 20;

/** Percents that are not of a count of this program: levels, limits of a method, what a source says, and a scale. */
const NOT_OF_A_COUNT = [
  /\d+(\.\d+)?% (confidence|limits|interval|funnel|lines|range)/g,
  /\b95%( of \w+ lie between the inner lines)? and 99\.8%( between the outer ones| of rows lie)?/g,
  /\bpower 80%/g,
  /^(95|99\.8)%, (lower|upper)$/g,
  /(percent|\d+(\.\d+)?%) or more (of|in|do)\b/g,
  /\bat most \d+(\.\d+)?% missing\b/g,
  /\b(under|and) \d+%|\d+[–-]\d+%|\b\d+% up\b|to \d+%, \d+% to \d+%, \d+% or more met/g,
];

/**
 * The percents of a text that no pair of counts goes with, or a pair of fewer than twenty. A percent goes with the pair
 * that opens its bracket, `62.4% (53 of 85)`, or with the last pair before it in its sentence.
 */
export function percentsOfFew(text: string): string[] {
  const read = NOT_OF_A_COUNT.reduce((rest, pattern) => rest.replace(pattern, " "), text);
  return [...read.matchAll(/\d+(?:\.\d+)?%/g)]
    .filter(({ index, 0: percent }) => {
      const behind = /^ \([\d,]+ of ([\d,]+)\)/.exec(read.slice(index + percent.length));
      const before = [...read.slice(0, index).matchAll(/\bof ([\d,]*\d)\b/gi)].at(-1);
      const base = behind?.[1] ?? before?.[1];
      return base === undefined || Number(base.replace(/,/g, "")) < LEAST;
    })
    .map(({ index, 0: percent }) => `${percent} in: ${read.slice(Math.max(0, index - 90), index + 40)}`);
}
