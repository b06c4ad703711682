import { listed, plural } from "../../words/numbers";
import { headingKey } from "../cells/words";
import type { Decision, SheetDecision } from "./decisions";
import { isVirtual, LEAVE_OUT, meaningTaken, skillTaken } from "./settled";

/**
 * What a person settled about sheets, headings, words and names, in a few lines for the method page. Spellings of sites and
 * staff are only counted.
 *
 * @param met - the decisions in force that something in the workbook met
 */
export function understandingInWords(met: readonly Decision[]): string[] {
  const of = <Kind extends Decision["kind"]>(kind: Kind) =>
    met.filter((each): each is Extract<Decision, { kind: Kind }> => each.kind === kind);
  const names = of("name").filter(({ spelling, means }) => spelling !== means);
  const columns = [...new Set(names.map(({ column }) => column))];
  return [
    ...of("sheet").map(sheetInWords),
    ...wordsInWords("Results written", of("word")),
    ...wordsInWords("Referrals for", of("area")),
    ...columns.map((column) => namesInWords(column, names.filter((each) => each.column === column).length)),
    ...skillsInWords(of("skill")),
  ];
}

function sheetInWords({ sheet, is, headings }: SheetDecision): string {
  const skills = headings.filter((each) => skillTaken(each) !== null).length;
  const renamed = headings.flatMap((each) => {
    const means = isVirtual(each) ? null : meaningTaken(each);
    return means === null || headingKey(means) === headingKey(each.heading) ? [] : [`“${each.heading}” is ${means}`];
  });
  const parts = [...renamed, ...(skills > 0 ? [`${plural(skills, "heading is a skill", "headings are skills")}`] : [])];
  return `The sheet “${sheet}” is read as ${is}${parts.length > 0 ? `: ${listed(parts)}` : ""}.`;
}

function wordsInWords(
  begins: string,
  words: readonly { readonly word: string; readonly means: string | null }[],
): string[] {
  const means = [...new Set(words.flatMap((each) => each.means ?? []))];
  return means.map((meaning) => {
    const own = words
      .filter((each) => each.means === meaning)
      .map(({ word }) => (word === "" ? "as a blank" : `“${word}”`));
    return `${begins} ${listed(own)} are ${meaning === LEAVE_OUT ? "left out" : `read as ${meaning}`}.`;
  });
}

function namesInWords(column: string, count: number): string {
  return `${plural(count, `spelling of ${column} is`, `spellings of ${column} are`)} read as another one.`;
}

function skillsInWords(skills: readonly Extract<Decision, { kind: "skill" }>[]): string[] {
  if (skills.length === 0) return [];
  const windows = skills.filter(({ opens, closes }) => (opens ?? closes ?? null) !== null).length;
  const given =
    windows === 0 ? "none has a window" : `${plural(windows, "has a window", "have a window")} that you gave`;
  return [`${plural(skills.length, "skill is", "skills are")} in no table of skills; ${given}.`];
}
