/**
 * Draws one of many cells in proportion to its weight, in the same time however many there are.
 *
 * Source: Walker (1977), ACM Trans Math Softw 3:253-256; set up as in Vose (1991), IEEE Trans Softw Eng 17:972-975.
 */
export class AliasTable {
  /** Below this the cell itself is drawn, at or above it its alias. */
  private readonly own: Float64Array;
  private readonly alias: Int32Array;

  /** @throws {RangeError} when a weight is negative or not a number, or none is above 0 */
  constructor(weights: Float64Array) {
    const total = weights.reduce((sum, weight) => sum + weight, 0);
    if (!weights.every((weight) => weight >= 0) || !(total > 0 && total < Infinity)) {
      throw new RangeError("AliasTable: weights are not negative, and one of them is above 0");
    }
    this.own = weights.map((weight) => (weight / total) * weights.length);
    this.alias = Int32Array.from(weights.keys());
    this.pair();
  }

  /** @param unit - from 0, included, to 1, excluded: its first digits choose the column, the rest the cell or its alias */
  draw(unit: number): number {
    const place = unit * this.own.length;
    const column = Math.floor(place);
    return place - column < this.own[column]! ? column : this.alias[column]!;
  }

  private pair(): void {
    const small: number[] = [];
    const large: number[] = [];
    this.own.forEach((share, cell) => (share < 1 ? small : large).push(cell));
    while (small.length > 0 && large.length > 0) {
      const less = small.pop() as number;
      const more = large[large.length - 1] as number;
      this.alias[less] = more;
      this.own[more]! -= 1 - this.own[less]!;
      if (this.own[more]! < 1) small.push(large.pop() as number);
    }
    // what is left is 1 but for rounding; a cell without weight must never be drawn as its own
    for (const cell of [...small, ...large]) if (this.own[cell]! > 0.5) this.own[cell] = 1;
  }
}
