import { useState } from "react";

/** A long list of which the first part is there, and the next is fetched when it is asked for. */
export function useParts<T>(first: readonly T[], count: number, next: (from: number) => Promise<readonly T[]>) {
  const [fetched, setFetched] = useState<{ readonly of: readonly T[]; readonly parts: readonly T[] }>({
    of: first,
    parts: [],
  });
  const parts = fetched.of === first ? [...first, ...fetched.parts] : first;
  const more = () =>
    void next(parts.length).then((part) => setFetched({ of: first, parts: [...parts.slice(first.length), ...part] }));
  return { parts, hidden: count - parts.length, more };
}
