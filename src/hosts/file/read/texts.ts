import type { Limits } from "./limits";
import { refuse } from "./unreadable";

/** All texts of a workbook in one list, which every sheet's cells point into. The shared ones come first, as numbered. */
export class Texts {
  readonly list: string[] = [];
  private readonly indexOf = new Map<string, number>();
  private characters = 0;
  private sharedCount = 0;

  constructor(private readonly limits: Limits) {}

  /** How many texts the workbook shares by number. */
  get shared(): number {
    return this.sharedCount;
  }

  addShared(text: string): void {
    this.add(text);
    this.sharedCount = this.list.length;
  }

  /** The number of a text that stands in a cell itself; each is kept once. */
  indexFor(text: string): number {
    let index = this.indexOf.get(text);
    if (index === undefined) {
      index = this.add(text);
      this.indexOf.set(text, index);
    }
    return index;
  }

  private add(text: string): number {
    this.characters += text.length;
    if (this.list.length >= this.limits.texts || this.characters > this.limits.textCharacters) {
      refuse("The workbook has more text than is read: keep only the sheets that are needed.");
    }
    return this.list.push(text) - 1;
  }
}
