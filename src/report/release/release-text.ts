import type { PreparedRelease } from "../../release/prepared";
import { footnoteOf, methodNoteOf } from "../../release/words/footnotes";
import { sentencesOf } from "../../release/words/sentences";
import type { WordsContext } from "../../release/words/words-context";
import { TOOL_NAME } from "../report";
import { VERSION } from "../version";
import { answerPassages } from "./answer-passages";
import { answerPictures, type Picture, picturesOf } from "./pictures";
import { publishedAges } from "./published";
import { readMeFirst } from "./read-me";

/** The words that go with tables in CSV, or with pictures, as plain text: a table there has no room for them. */
export function releaseText(release: PreparedRelease, context: WordsContext): string {
  const answers = answerPassages(release.tables, context);
  const passages = [...answers, ...readMeFirst(release)].flatMap(({ heading, lines }) => [heading, "", ...lines, ""]);
  const tables = release.tables.flatMap((table) => [
    `${table.id}: ${table.title}`,
    "",
    footnoteOf(table, context),
    methodNoteOf(table),
    ...table.notes,
    "",
    ...sentencesOf(table, context).map(({ text }) => text),
    "",
    ...(context.answered === undefined ? [...pictureLines(picturesOf(table, context)), ""] : []),
  ]);
  const asked = context.answered === undefined ? [] : [...pictureLines(answerPictures(release.tables, context)), ""];
  const ages = publishedAges(release, context).map(({ text }) => text);
  const published = ages.length === 0 ? [] : ["Published ages, each with what it is", "", ...ages];
  return `${TEXT_MARK} ${VERSION}\n\n${[...passages, ...tables, ...asked, ...published].join("\n").trimEnd()}\n`;
}

function pictureLines(pictures: readonly Picture[]): string[] {
  if (pictures.length === 0) return ["There is no picture: every figure that it would show is held back."];
  return pictures.map(({ name, altText }) => `Alternative text of the picture ${name}: ${altText}`);
}

/** The first words of the file, by which a later run knows its own work. */
export const TEXT_MARK = `Read me first: a release prepared with ${TOOL_NAME}`;
