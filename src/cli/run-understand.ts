import { LEAVE_OUT, SHEET_DAY } from "../records/corrections/settled";
import { AREAS } from "../records/records";
import { applyChoice } from "../records/understanding/choices";
import { toFile } from "../records/understanding/file";
import { understand } from "../records/understanding/understand";
import {
  type AreaTaken,
  contentShown,
  type HeadingSeen,
  type SheetTaken,
  type ShortYears,
  type Understanding,
  type WordTaken,
} from "../records/understanding/understanding";
import { plural } from "../words/numbers";
import { placeInWords } from "../workbook/sources";
import { EXIT } from "./failure";
import { checkOutputs, writeWhole } from "./files";
import { openBooks, shownName } from "./books";
import { inputsOf, refuseOther, settledFrom } from "./open";
import type { RequestOf } from "./request";
import { print } from "./say";

/** Shows how a workbook is understood, and writes it as a file to be looked through and corrected. */
export async function runUnderstandCommand(request: RequestOf<"understand">): Promise<number> {
  checkOutputs(inputsOf({ ...request, decisions: null }), request.out ? [request.out] : []);
  const saved = settledFrom({ understanding: request.understanding, decisions: null });
  const workbook = await openBooks(request.books);
  refuseOther(workbook, saved.decisions);
  const found = understand(workbook, request.understanding === null ? null : saved);
  if (request.out)
    writeWhole(request.out, `${JSON.stringify(toFile(applyChoice(found, { kind: "confirm" })), null, 2)}\n`);
  print(understandingText(found, request.books.map(shownName), request.out));
  return EXIT.done;
}

/** What a person reads: what each sheet is, with a question mark where it is only guessed. */
export function understandingText(found: Understanding, books: readonly string[], out: string | null): string {
  const { sheets, words, areas, names, sameChild, missing, skills, changes } = found;
  const noArea = skills.filter(({ area }) => area === "");
  return [
    "How the workbook is understood. A question mark marks a guess: check it first.",
    ...changes.map(({ sentence }) => `! ${sentence}`),
    ...sheets.flatMap(sheetLines),
    ...missing.map(({ sentence }) => `? ${sentence}`),
    ...(words.length > 0 ? ["Words among results:", ...words.map(wordLine)] : []),
    ...(found.resultsNotShown > 0 ? [notShownLine(found.resultsNotShown)] : []),
    ...(areas.length > 0 ? ["Words for areas, on referrals:", ...areas.map(areaLine)] : []),
    ...(found.shortYears ? [shortYearsLine(found.shortYears)] : []),
    ...names.map(
      ({ column, spelling, cells, means, doubtful }) =>
        `${mark(doubtful)} ${column}: "${spelling}" (${cells}) is read as "${means}".`,
    ),
    ...sameChild.map(
      ({ first, second, why }) => `? ${first} and ${second} may be one child. ${why} Nothing was joined.`,
    ),
    ...(skills.length > 0 ? [skillsLine(skills)] : []),
    ...(noArea.length > 0 ? [`? ${noArea.length} of them have no area yet: write it after "area" in the file.`] : []),
    out
      ? `Written: ${out}. Read it, correct what is wrong, and give it with --understanding.`
      : `To settle it, write it to a file: windowline understand ${books.join(" ")} --out ${fileFor(books)}.windowline.json`,
  ].join("\n");
}

function fileFor([first = ""]: readonly string[]): string {
  return first.replace(/\.(xlsx|csv|parquet|sqlite)$|\/+$/i, "");
}

function sheetLines(taken: SheetTaken): string[] {
  const { is, why, doubtful, headerRows, rows, headings } = taken;
  const where = headerRows.length > 0 ? `, headings in row ${headerRows.join(" and ")}, ${rows} rows` : "";
  const used = headings.filter(({ means, skill }) => means !== null || skill !== null);
  const unused = is === "not used" ? [] : headings.filter((each) => !used.includes(each) && each.heading !== SHEET_DAY);
  const noDay = headings.some(({ heading, means }) => heading === SHEET_DAY && means === null);
  return [
    `${mark(doubtful)} ${placeInWords(taken)}: ${is}${where}. ${why}`,
    ...used.filter(({ skill }) => skill === null).map(headingLine),
    ...skillLines(used.filter(({ skill, means }) => skill !== null && means === null)),
    ...dayLines(used.filter(({ skill, means }) => skill !== null && means !== null)),
    ...(noDay
      ? [`    ? write the day of these checks after "means" of "${SHEET_DAY}" in the file, such as "2026-09-30"`]
      : []),
    ...(unused.length > 0
      ? [`      not used: ${unused.map(({ heading, content }) => `${heading} (${content})`).join(", ")}`]
      : []),
  ];
}

function headingLine(seen: HeadingSeen): string {
  const { heading, cell, means, cells, doubtful } = seen;
  const place = cell === "" ? "" : ` (${cell})`;
  return `    ${mark(doubtful)} ${heading}${place} is ${means ?? "not used"}: ${cells} cells, ${contentShown(seen)}`;
}

function dayLines(days: readonly HeadingSeen[]): string[] {
  if (days.length === 0) return [];
  return [`      ${days.length} of them have days of their own: ${days.map(({ heading }) => heading).join(", ")}`];
}

function skillLines(skills: readonly HeadingSeen[]): string[] {
  if (skills.length === 0) return [];
  const doubtful = skills.filter((each) => each.doubtful).map(({ heading }) => heading);
  return [
    `      ${skills.length} skills: ${skills.map(({ skill }) => skill).join(", ")}`,
    ...(doubtful.length > 0 ? [`    ? check these: ${doubtful.join(", ")}`] : []),
  ];
}

function wordLine({ word, cells, means, why, doubtful }: WordTaken): string {
  const name = word === "" ? "blank cells beside ticks" : `"${word}"`;
  const taken = means === null ? "choose met, emerging, not met, lost or leave out" : `read as ${means}`;
  return `  ${mark(doubtful)} ${name}, ${cells} cells: ${taken}. ${why}`;
}

function skillsLine(skills: Understanding["skills"]): string {
  const open = skills.filter(({ opens, closes }) => opens === null && closes === null).length;
  const windows =
    open === skills.length
      ? "They have no window until you give one."
      : open > 0
        ? `${open} of them have no window until you give one.`
        : "All have the windows that you gave.";
  return `${skills.length} skills are in no table of skills. ${windows}`;
}

function shortYearsLine({ cells, headings, means, doubtful }: ShortYears): string {
  const taken = means === LEAVE_OUT ? "left out" : `read as ${means}`;
  return `${mark(doubtful)} ${plural(cells, "date has a year", "dates have years")} of two digits, under ${headings.join(", ")}: ${taken}.`;
}

function notShownLine(cells: number): string {
  const results = plural(cells, "result is", "results are");
  return `! ${results} a text that is not shown here: it is there once, or looks like a name or a note. "windowline check" lists each cell.`;
}

function areaLine({ word, cells, means, why, doubtful }: AreaTaken): string {
  const taken = means === null ? `choose one of ${AREAS.join(", ")}, or leave out` : `read as ${means}`;
  return `  ${mark(doubtful)} "${word}", ${plural(cells, "referral", "referrals")}: ${taken}. ${why}`;
}

function mark(doubtful: boolean): string {
  return doubtful ? "?" : " ";
}
