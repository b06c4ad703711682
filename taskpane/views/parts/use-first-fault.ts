import { useEffect, useRef } from "react";

/** Work that was refused takes the keyboard to the first field that wants a look. */
export function useFirstFault(refused: number) {
  const place = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (refused > 0) place.current?.querySelector<HTMLElement>("[aria-invalid=true]")?.focus();
  }, [refused]);
  return place;
}
