import type { KeyLookup } from "./ids";
import { displayOf } from "./words";

/** The observers, numbered as they first appear. */
export class ObserverList {
  readonly names: string[] = [];
  private readonly indexOf = new Map<string, number>();

  readonly lookup: KeyLookup = (key, text) => {
    const index = this.indexOf.get(key) ?? this.names.push(displayOf(text)) - 1;
    this.indexOf.set(key, index);
    return index;
  };
}
