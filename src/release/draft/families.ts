/** Children put in order of their families, so that a family is counted once wherever its children stand together. */
export interface Families {
  /** Of each child; children without a recorded family have one each. */
  readonly ofChild: Int32Array;
  /** All children, those of one family next to each other. */
  readonly inOrder: readonly number[];
  readonly count: number;
}

/** @param codes - one a child, "" where none is recorded */
export function familiesOf(codes: readonly string[]): Families {
  const known = new Map<string, number>();
  let count = 0;
  const ofChild = Int32Array.from(codes, (code) => {
    const name = code.normalize("NFKC").trim().toLowerCase();
    const family = known.get(name);
    if (name === "" || family === undefined) {
      if (name !== "") known.set(name, count);
      return count++;
    }
    return family;
  });
  const inOrder = [...codes.keys()].sort((a, b) => ofChild[a]! - ofChild[b]! || a - b);
  return { ofChild, inOrder, count };
}
