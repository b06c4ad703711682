import { displayOf, isBlankText, wordKey } from "../cells/words";
import { LEAVE_OUT } from "../corrections/settled";

const BETWEEN_AREAS = /[;\n]/;
/** Between areas too where the text as a whole names none: `speech, fine motor`, `walking & talking`. */
const LOOSELY_BETWEEN = /[,/&+|]|\band\b|\by\b/i;

/** The area of a text as Skills or the six name it; null where it is neither. */
export type AreaNamed = (text: string) => string | null;

/** What a person settled of a word among areas, by `wordKey`; null where not yet, undefined where nothing is said of it. */
export type AreaSettled = (key: string) => string | null | undefined;

/** Each area or word that a cell names, by itself. */
export function areaWords(cell: string, named: AreaNamed, settled: AreaSettled): string[] {
  const isKnown = (text: string) => named(text) !== null || settled(wordKey(text)) !== undefined;
  return cell
    .split(BETWEEN_AREAS)
    .flatMap((part) => (isKnown(part) ? [part] : part.split(LOOSELY_BETWEEN)))
    .filter((part) => !isBlankText(part))
    .map(displayOf);
}

/** The areas that a cell names, each once; `LEAVE_OUT` among them where a person said so, null for a word that is not known. */
export function areasNamed(cell: string, named: AreaNamed, settled: AreaSettled): (string | null)[] {
  return [...new Set(areaWords(cell, named, settled).flatMap((word) => areasOf(word, named, settled(wordKey(word)))))];
}

function areasOf(word: string, named: AreaNamed, means: string | null | undefined): (string | null)[] {
  if (means === undefined) return [named(word)];
  if (means === null) return [null];
  if (means === LEAVE_OUT) return [LEAVE_OUT];
  return means
    .split(";")
    .filter((part) => !isBlankText(part))
    .map(named);
}
