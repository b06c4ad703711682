import { shownText } from "../cells/cell-text";
import { wordKey } from "../cells/words";
import type { Block } from "../headings/block";
import { plainWords } from "../headings/likely";
import type { AREAS } from "../records";
import { type AreaNamed, type AreaSettled, areaWords } from "../services/area-words";
import type { AreaTaken } from "./understanding";

const LONGEST_CELL = 36;
const LONGEST_WORD = 24;
const MOST_PARTS = 3;
const MOST_WORDS = 24;

/** Everyday words that say an area. A word that says two of them, or none, is asked. Common practice, no source. */
const SAYS: readonly (readonly [area: (typeof AREAS)[number], pattern: RegExp])[] = [
  [
    "gross motor",
    /\b(walk\w*|crawl\w*|roll\w*|sitting|standing|balance|mobility|gross|(big|large) (motor|muscles?)|gait|caminar|gatear)\b/,
  ],
  ["fine motor", /\b(hands?|grasp\w*|pinch|fingers?|drawing|fine|small (motor|muscles?))\b/],
  ["speech", /\b(talk\w*|speech|speak\w*|languages?|communicat\w*|words|babbl\w*|habla|hablar|lenguaje)\b/],
  ["sensory", /\b(hear\w*|vision|sight|see(ing|s)?|eyes?|ears?|sensor\w*|oido|vista|vision)\b/],
  ["social-emotional", /\b(social|emotion\w*|behaviou?r\w*|attachment|conducta)\b/],
  ["cognitive", /\b(cognit\w*|think\w*|learning|problem solving|aprendizaje)\b/],
];

/**
 * The words among the areas of referrals that name no area, each once with its count. What an everyday word most likely
 * says is offered, with doubt; nothing is settled unasked. Text that is long, or an id or a name, is never shown.
 *
 * @param never - keys of ids and names
 */
export function areasMet(
  blocks: readonly Block[],
  named: AreaNamed,
  settled: AreaSettled,
  never: ReadonlySet<string>,
): AreaTaken[] {
  const counts = countWords(blocks, named, settled);
  return [...counts]
    .filter(([key, { text }]) => settled(key) !== undefined || isShown(text, key, never))
    .sort(([, a], [, b]) => b.cells - a.cells)
    .slice(0, MOST_WORDS)
    .map(([key, { text, cells }]) => areaTaken(text, cells, settled(key)));
}

function countWords(blocks: readonly Block[], named: AreaNamed, settled: AreaSettled) {
  const counts = new Map<string, { text: string; cells: number }>();
  for (const { grid, columns, rows } of blocks) {
    const at = columns.get("area");
    for (const row of at === undefined ? [] : rows) {
      const cell = shownText(grid, row, at as number);
      if (cell.length > LONGEST_CELL) continue;
      for (const text of new Set(areaWords(cell, named, settled))) {
        const key = wordKey(text);
        if (named(text) !== null && settled(key) === undefined) continue;
        const known = counts.get(key) ?? { text, cells: 0 };
        counts.set(key, { ...known, cells: known.cells + 1 });
      }
    }
  }
  return counts;
}

function isShown(text: string, key: string, never: ReadonlySet<string>): boolean {
  if (text.length > LONGEST_WORD || never.has(key) || /\d{2}|@/.test(text)) return false;
  return text.split(/\s+/).length <= MOST_PARTS;
}

function areaTaken(word: string, cells: number, settled: string | null | undefined): AreaTaken {
  if (settled) return { word, cells, means: settled, why: "As you settled it.", doubtful: false };
  const said = SAYS.filter(([, pattern]) => pattern.test(plainWords(word))).map(([area]) => area);
  if (said.length === 1)
    return { word, cells, means: said[0] as string, why: "It is an everyday word for this area.", doubtful: true };
  return { word, cells, means: null, why: "It names no area that the workbook or the program knows.", doubtful: true };
}
