import { invalid, outOfRange } from "../failure";
import { isEmpty, singleOf } from "./cells";
import { numberFrom, wordFrom } from "./values";

/** One of a few words; the first where the argument was left out, or is an empty cell handed over as 0. */
export function wordOf<Word extends string>(argument: unknown, name: string, words: readonly [Word, ...Word[]]): Word {
  const cell = singleOf(argument, name);
  if (isEmpty(cell)) return words[0];
  const found = words.find((word) => word === wordFrom(cell));
  if (found === undefined) throw invalid(`${name} is one of: ${words.join(", ")}.`);
  return found;
}

const USUAL_LEVEL = 0.95;

/** A confidence level between 0 and 1. 0 is out of range, also where it stands for an empty cell. */
export function levelOf(argument: unknown): number {
  const cell = singleOf(argument, "level");
  const level = cell === null ? USUAL_LEVEL : numberFrom(cell, "level");
  if (!(level > 0 && level < 1)) throw outOfRange("level lies between 0 and 1, such as 0.95.");
  return level;
}

const USUAL_SEED = 20_240_229;
const LARGEST_SEED = 4_294_967_295;

/** A whole number; 0 stands for an empty cell and gives the usual seed. */
export function seedOf(argument: unknown): number {
  const cell = singleOf(argument, "seed");
  const seed = isEmpty(cell) ? USUAL_SEED : numberFrom(cell, "seed");
  if (!Number.isInteger(seed)) throw invalid("seed is a whole number.");
  if (seed < 0 || seed > LARGEST_SEED) throw outOfRange(`seed goes from 1 to ${LARGEST_SEED}.`);
  return seed;
}
