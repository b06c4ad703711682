/** Why a cell shows an error, by sheet and cell, so that the page can say it in words. */
export class CellMessages {
  private readonly messages = new Map<string, string>();
  private readonly listeners = new Set<() => void>();

  set(sheetId: string, row: number, column: number, message: string | null): void {
    const key = keyOf(sheetId, row, column);
    if (message === null ? !this.messages.delete(key) : this.messages.get(key) === message) return;
    if (message !== null) this.messages.set(key, message);
    this.listeners.forEach((listener) => listener());
  }

  at(sheetId: string, row: number, column: number): string | null {
    return this.messages.get(keyOf(sheetId, row, column)) ?? null;
  }

  clear(): void {
    this.messages.clear();
    this.listeners.forEach((listener) => listener());
  }

  subscribe(listener: () => void): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }
}

function keyOf(sheetId: string, row: number, column: number): string {
  return `${sheetId} ${row} ${column}`;
}
