import { useSyncExternalStore } from "react";

const DARK = "(prefers-color-scheme: dark)";

/** Whether the user asked the system for dark pages. */
export function useDark(): boolean {
  return useSyncExternalStore(listen, () => window.matchMedia(DARK).matches);
}

function listen(changed: () => void): () => void {
  const query = window.matchMedia(DARK);
  query.addEventListener("change", changed);
  return () => query.removeEventListener("change", changed);
}
