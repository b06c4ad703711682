import type { PreparedRelease } from "../release/prepared";
import type { WordsContext } from "../release/words/words-context";
import { sentencesOf } from "../release/words/sentences";
import { safeSheetNames } from "../workbook/sheet-names";
import type { SheetOut } from "../workbook/sheets";
import { answerPassages } from "./release/answer-passages";
import { publishedAges } from "./release/published";
import { readMeFirst } from "./release/read-me";
import { releasePage } from "./release/release-page";
import { releaseTableSheet } from "./release/release-table-sheet";
import { SheetDraft } from "./sheets/sheet-draft";
import { sheetNameOf } from "./sheets/sheet-plan";

/** A release as sheets of values: read me first, answers to what was asked, the tables, each figure in words, published ages with their labels. */
export function releaseSheets(release: PreparedRelease, context: WordsContext): SheetOut[] {
  const sheets = [
    readMeSheet(release, context),
    ...answersSheet(release, context),
    ...release.tables.map((table) => releaseTableSheet(table, context)),
    ...wordsSheets(release, context),
  ];
  const names = safeSheetNames(sheets.map(({ name }) => name));
  return sheets.map((sheet, index) => ({ ...sheet, name: names[index] as string }));
}

const PAGE_WIDTH = 100;

function readMeSheet(release: PreparedRelease, context: WordsContext): SheetOut {
  const half = { width: PAGE_WIDTH / 2, style: "wrapped" } as const;
  const draft = new SheetDraft("Read me first", [half, half]);
  draft.spanning("Read me first: how these figures were prepared, and what they do not say", "title");
  for (const { heading, lines } of readMeFirst(release)) {
    draft.spanning(heading, "section");
    for (const line of lines) draft.spanning(line, "note");
  }
  return draft.finished(releasePage(context));
}

/** The questions that were asked lead the workbook; a release of whole tables has none. */
function answersSheet({ tables }: PreparedRelease, context: WordsContext): SheetOut[] {
  const passages = answerPassages(tables, context);
  if (passages.length === 0) return [];
  const draft = new SheetDraft("Answers", [{ width: PAGE_WIDTH, style: "wrapped" }]);
  draft.spanning("The questions that were asked, and their figures", "title");
  for (const { heading, lines } of passages) {
    draft.spanning(heading, "section");
    for (const line of lines) draft.spanning(line, "note");
  }
  return [draft.finished(releasePage(context))];
}

function wordsSheets(release: PreparedRelease, context: WordsContext): SheetOut[] {
  const sentences = release.tables.flatMap((table) =>
    sentencesOf(table, context).map(({ text }) => [sheetNameOf(table.id), text] as const),
  );
  const published = publishedAges(release, context).map(({ area, text }) => [area, text] as const);
  return [
    ...listSheet("Sentences", "The figures in words, each with its numbers", ["Table", "Sentence"], sentences, context),
    ...listSheet(
      "Published ages",
      "Published ages, each with what it is",
      ["Area", "Skill, age and source"],
      published,
      context,
    ),
  ];
}

function listSheet(
  name: string,
  title: string,
  headings: readonly [string, string],
  rows: readonly (readonly [string, string])[],
  context: WordsContext,
): SheetOut[] {
  if (rows.length === 0) return [];
  const draft = new SheetDraft(name, [
    { width: 20, style: "text" },
    { width: PAGE_WIDTH, style: "wrapped" },
  ]);
  draft.spanning(title, "title");
  draft.row(headings.map((value) => ({ value, style: "heading" })));
  draft.body(rows);
  const print = { ...releasePage(context), repeatRows: { first: 1, last: 1 } };
  return [draft.finished(print, { frozen: { rows: 2, columns: 0 } })];
}
