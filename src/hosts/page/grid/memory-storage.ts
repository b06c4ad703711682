import type { ILocalStorageService } from "@univerjs/core";

/** The grid keeps a few habits in the browser's database; here they last as long as the page, and nothing is stored. */
export class MemoryStorage implements ILocalStorageService {
  private readonly kept = new Map<string, unknown>();

  async getItem<T>(key: string): Promise<T | null> {
    return (this.kept.get(key) as T | undefined) ?? null;
  }

  async setItem<T>(key: string, value: T): Promise<T> {
    this.kept.set(key, value);
    return value;
  }

  async removeItem(key: string): Promise<void> {
    this.kept.delete(key);
  }

  async clear(): Promise<void> {
    this.kept.clear();
  }

  async key(index: number): Promise<string | null> {
    return [...this.kept.keys()][index] ?? null;
  }

  async keys(): Promise<string[]> {
    return [...this.kept.keys()];
  }

  async iterate<T, U>(take: (value: T, key: string, index: number) => U): Promise<U> {
    let last: U | undefined;
    [...this.kept].forEach(([key, value], index) => (last = take(value as T, key, index)));
    return last as U;
  }
}
