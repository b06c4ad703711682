import { useEffect, useRef } from "react";

/** Where a button gives way to what it fetched, the keyboard goes on to that. */
export function useFollow(isThere: boolean) {
  const place = useRef<HTMLDivElement>(null);
  const asked = useRef(false);
  useEffect(() => {
    if (!isThere || !asked.current) return;
    asked.current = false;
    (place.current?.querySelector<HTMLElement>("select, input") ?? place.current)?.focus();
  }, [isThere]);
  return { place, ask: () => (asked.current = true) };
}
