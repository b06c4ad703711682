import { type RefObject, useEffect } from "react";
import { CELL_EDITOR } from "../grid/cell-editor";
import { LET_IN } from "../grid/keep-out";

/**
 * The parts of the page in the order in which F6 goes round them, as in the programs of an office: the spreadsheet keeps the
 * Tab key for its cells, so that nothing else leads out of it.
 */
const PARTS: readonly { readonly holds: string; readonly takesFocus: string }[] = [
  { holds: ".grid", takesFocus: `.grid ${CELL_EDITOR}` },
  { holds: ".pane", takesFocus: ".pane" },
  { holds: ".bar", takesFocus: ".bar button:not(:disabled)" },
];

export function useF6(page: RefObject<HTMLElement | null>): void {
  useEffect(() => {
    const move = (event: KeyboardEvent) => {
      if (event.key !== "F6" || !page.current) return;
      event.preventDefault();
      const stop = nextStop(page.current);
      stop?.dispatchEvent(new Event(LET_IN, { bubbles: true }));
      stop?.focus();
    };
    window.addEventListener("keydown", move, true);
    return () => window.removeEventListener("keydown", move, true);
  }, [page]);
}

/** Whatever is in none of the parts counts as the spreadsheet. A part that takes no focus now is passed over. */
function nextStop(page: HTMLElement): HTMLElement | null {
  const at = PARTS.findIndex(({ holds }) => Boolean(document.activeElement?.closest(holds)));
  const from = Math.max(0, at);
  for (let step = 1; step <= PARTS.length; step += 1) {
    const { takesFocus } = PARTS[(from + step) % PARTS.length] as (typeof PARTS)[number];
    const stop = page.querySelector<HTMLElement>(takesFocus);
    if (stop) return stop;
  }
  return null;
}
