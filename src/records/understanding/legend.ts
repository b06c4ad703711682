import { CELL } from "../../workbook/cells";
import type { SheetIn, WorkbookIn } from "../../workbook/workbook";
import { shownText } from "../cells/cell-text";
import { wordKey } from "../cells/words";
import type { WordMeaning } from "../corrections/settled";

const LONGEST_LEGEND = 300;
/** `E = emerging`, `E: emerging`, `E – emerging`, several of them apart by commas, semicolons or lines. */
const ENTRY =
  /^\s*["'“]?([^\s"'”=:]{1,10}(?: [^\s"'”=:]{1,10})?)["'”]?\s*(?:=|:|–|—|->|→| - | means | is )\s*(.+?)\s*$/i;

const MEANINGS: readonly (readonly [WordMeaning, RegExp])[] = [
  [
    "leave out",
    /\b(not (checked|seen|tested|observed|tried|asked|applicable|attempted)|n\/?a|refused|absent|skip\w*|no opportunity)\b/,
  ],
  ["lost", /\b(lost|loss|regress\w*|no longer)\b/],
  [
    "emerging",
    /\b(emerg\w*|partly|partial\w*|sometimes|some of the time|with (help|support|assistance|prompts?)|assisted|in progress|developing|beginning|starting|en proceso|a veces)\b/,
  ],
  [
    "not met",
    /\b(not (yet|met|achieved|able|there)|cannot|can not|can't|does not|doesn't|unable|never|unmet|no|todavia no|aun no|no logrado)\b/,
  ],
  [
    "met",
    /\b(met|achiev\w*|attained|master\w*|yes|can|does|done|reached|able|always|present|consistently|independent\w*|has it|logrado|si)\b/,
  ],
];

/**
 * What the workbook itself says its marks stand for: texts such as "E = emerging", and pairs of neighbouring cells of which the
 * left is a short mark and the right a known meaning, outside the columns of a table. By `wordKey`; a mark that is explained in two ways is not in it.
 */
export function legendOf(workbook: WorkbookIn): ReadonlyMap<string, WordMeaning> {
  const found = new Map<string, WordMeaning | null>();
  const add = (mark: string, meaning: string) => {
    const means = meaningOf(meaning);
    const key = wordKey(mark);
    if (means === null || key === "") return;
    const known = found.get(key);
    found.set(key, known === undefined || known === means ? means : null);
  };
  for (const sheet of workbook.sheets) {
    for (const text of sheet.grid.strings)
      if (text.length <= LONGEST_LEGEND && /[=:–—→]| - | means /.test(text)) readLegend(text, add);
    readPairs(sheet, add);
  }
  return new Map([...found].flatMap(([key, means]) => (means === null ? [] : [[key, means] as const])));
}

/** The meaning that a few words of a legend say; null where they say none, or more than one could. */
export function meaningOf(text: string): WordMeaning | null {
  if (text.length > 60) return null;
  const plain = text.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase();
  return MEANINGS.find(([, pattern]) => pattern.test(plain))?.[0] ?? null;
}

function readLegend(text: string, add: (mark: string, meaning: string) => void): void {
  const body = text.replace(/^\s*[\p{L} ]{3,30}[:.]\s*(?=\S{1,10}\s*[=–—→-])/u, "");
  for (const part of body.split(/[,;\n|]|\.\s|\s{3,}/)) {
    const entry = ENTRY.exec(part);
    if (entry) add(entry[1] as string, entry[2] as string);
  }
}

/** Two cells side by side, `E` and `Emerging`, in a list of two or more such rows below each other. */
function readPairs({ grid }: SheetIn, add: (mark: string, meaning: string) => void): void {
  grid.columns.forEach((column, at) => {
    const next = grid.columns[at + 1];
    if (!column || !next) return;
    const pairs: [row: number, mark: string, meaning: string][] = [];
    column.kinds.forEach((kind, row) => {
      if (kind === CELL.empty || next.kinds[row] !== CELL.text) return;
      const mark = shownText(grid, row, at);
      if (mark.length > 3 || mark === "") return;
      pairs.push([row, mark, shownText(grid, row, at + 1)]);
    });
    if (pairs.length < 2 || pairs.length > 12) return;
    const marks = new Set(pairs.map(([, mark]) => wordKey(mark)));
    const known = pairs.filter(([, , meaning]) => meaningOf(meaning) !== null);
    // A legend says each mark once, and something of each.
    if (marks.size === pairs.length && known.length === pairs.length)
      known.forEach(([, mark, meaning]) => add(mark, meaning));
  });
}
