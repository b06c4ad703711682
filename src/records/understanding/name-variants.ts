import { keyOf } from "../cells/words";
import type { NameTaken } from "./understanding";

const ABBREVIATIONS: Readonly<Record<string, string>> = {
  st: "street",
  str: "street",
  ave: "avenue",
  av: "avenue",
  rd: "road",
  dr: "drive",
  blvd: "boulevard",
  ctr: "center",
  centre: "center",
  cntr: "center",
  bldg: "building",
  mt: "mount",
  ft: "fort",
  n: "north",
  s: "south",
  e: "east",
  w: "west",
  dept: "department",
};
const FEWEST_LETTERS = 5;

/**
 * Spellings of one column that look like another spelling of the same: written together, abbreviated, or one letter off. Each
 * points at the one that most rows have. Nothing is joined here.
 *
 * @param counts - rows by spelling
 */
export function nameVariants(
  column: string,
  counts: ReadonlyMap<string, number>,
  settled: (spelling: string) => string | undefined,
): NameTaken[] {
  const all = [...counts].sort(([a, m], [b, n]) => n - m || (a < b ? -1 : 1));
  return all.flatMap(([spelling, cells], i): NameTaken[] => {
    const said = settled(spelling);
    const likely = all.slice(0, i).find(([other]) => looksAlike(spelling, other))?.[0];
    if (said !== undefined) return [{ column, spelling, cells, means: said, likely: likely ?? said, doubtful: false }];
    return likely === undefined ? [] : [{ column, spelling, cells, means: likely, likely, doubtful: true }];
  });
}

/** Case, spaces, punctuation, common abbreviations, a word left out at the end, or one letter off in a longer name. */
export function looksAlike(a: string, b: string): boolean {
  const [x, y] = [tokens(a), tokens(b)];
  const [left, right] = [x.join(""), y.join("")];
  if (left === right) return true;
  if (/\d/.test(left) || /\d/.test(right)) return false;
  if (isShortened(x, y) || isShortened(y, x)) return true;
  return Math.min(left.length, right.length) >= FEWEST_LETTERS && isOneOff(left, right);
}

function tokens(text: string): string[] {
  const plain = keyOf(text).normalize("NFD").replace(/\p{M}/gu, "");
  return plain
    .split(/[^\p{L}\p{N}]+/u)
    .filter((each) => each !== "")
    .map((each) => ABBREVIATIONS[each] ?? each);
}

/** `Mill` for `Mill Street`: the first words are the same, and what is left out is a common last word. */
function isShortened(short: readonly string[], long: readonly string[]): boolean {
  const isStart = short.length > 0 && short.length < long.length && short.every((each, i) => each === long[i]);
  return isStart && long.slice(short.length).every((each) => COMMON_LAST.has(each));
}

const COMMON_LAST = new Set([
  ...Object.values(ABBREVIATIONS).slice(0, 8),
  "center",
  "building",
  "clinic",
  "site",
  "office",
  "program",
  "school",
]);

/** One letter more, less, other, or two that changed places. */
function isOneOff(a: string, b: string): boolean {
  if (Math.abs(a.length - b.length) > 1) return false;
  let i = 0;
  while (i < a.length && a[i] === b[i]) i += 1;
  const rest = (text: string, from: number) => text.slice(from);
  if (rest(a, i + 1) === rest(b, i + 1) || rest(a, i) === rest(b, i + 1) || rest(a, i + 1) === rest(b, i)) return true;
  return a[i] === b[i + 1] && a[i + 1] === b[i] && rest(a, i + 2) === rest(b, i + 2);
}
