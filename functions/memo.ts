import { sha256 } from "@noble/hashes/sha2";
import { bytesToHex, utf8ToBytes } from "@noble/hashes/utils";
import type { AnswerCell } from "./answer";
import { currentDateSystem } from "./date-system";

type Rows = readonly (readonly AnswerCell[])[];

const KEPT = 16;
const answers = new Map<string, Rows>();

/**
 * The rows of a function for these arguments, worked out once: a sheet asks the same question again whenever it
 * recalculates. The key is the content of the arguments, so that an edit is always seen.
 */
export function remembered(name: string, args: readonly unknown[], rows: () => Rows): Rows {
  const key = bytesToHex(sha256(utf8ToBytes(JSON.stringify([name, currentDateSystem(), args]))));
  const known = answers.get(key);
  const answer = known ?? rows();
  answers.delete(key);
  answers.set(key, answer);
  if (answers.size > KEPT) answers.delete(answers.keys().next().value as string);
  return answer;
}
