import { sha256 } from "@noble/hashes/sha2";
import { bytesToHex, utf8ToBytes } from "@noble/hashes/utils";
import type { AnswerCell } from "./answer";
import { currentDateSystem } from "./date-system";

type Rows = readonly (readonly AnswerCell[])[];

/** Room for the answers of a whole workbook of formulas, in some tens of megabytes. */
const MOST_CELLS = 1_000_000;
/** What an answer takes beside its cells, as so many cells. */
const CELLS_OF_AN_ANSWER = 50;

const answers = new Map<string, Rows>();
let kept = 0;

/**
 * The rows of a function for these arguments, worked out once: a sheet asks the same questions again whenever it
 * recalculates. The key is the content of the arguments, so that an edit is always seen.
 */
export function remembered(name: string, args: readonly unknown[], rows: () => Rows): Rows {
  const key = bytesToHex(sha256(utf8ToBytes(JSON.stringify([name, currentDateSystem(), args]))));
  const known = answers.get(key);
  const answer = known ?? rows();
  forget(key);
  answers.set(key, answer);
  kept += cellsOf(answer);
  makeRoom();
  return answer;
}

/** The answer that was not asked for the longest goes first. */
function makeRoom(): void {
  for (const oldest of answers.keys()) {
    if (kept <= MOST_CELLS) return;
    forget(oldest);
  }
}

function forget(key: string): void {
  const answer = answers.get(key);
  if (!answer) return;
  kept -= cellsOf(answer);
  answers.delete(key);
}

function cellsOf(rows: Rows): number {
  return CELLS_OF_AN_ANSWER + rows.length * (rows[0]?.length ?? 0);
}
