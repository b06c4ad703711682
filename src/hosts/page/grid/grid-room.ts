import { CellMessages } from "../functions/messages";
import { WorkerCalls } from "../../../../functions/elsewhere/worker-calls";
import { createGrid } from "./create-grid";
import { PageGrid } from "./page-grid";

export interface GridRoom {
  readonly grid: PageGrid;
  readonly messages: CellMessages;
}

/** The spreadsheet with our functions in it, light or dark as the person's system is. */
export function gridRoom(container: HTMLElement): GridRoom {
  const messages = new CellMessages();
  const calls = new WorkerCalls(
    () => new Worker(new URL("../../../../functions/elsewhere/function-worker.ts", import.meta.url)),
  );
  calls.start();
  const darkness = matchMedia("(prefers-color-scheme: dark)");
  const parts = createGrid({
    container,
    dark: darkness.matches,
    messages,
    answerElsewhere: (name, args) => calls.answer(name, args, 1900),
  });
  nameControls(container);
  const grid = new PageGrid(parts);
  darkness.addEventListener("change", ({ matches }) => grid.setDark(matches));
  return { grid, messages };
}

/** Controls that the spreadsheet draws as pictures alone, with the words that a screen reader says for them. */
const NAMES: Readonly<Record<string, string>> = {
  "[data-u-comp=defined-name] input": "Cell or range to go to",
  "[data-u-comp=formula-bar] button": "Close the formula help",
  "button:has(.univerjs-icon-increase-icon)": "Add a sheet",
  "button:has(.univerjs-icon-convert-icon)": "List of all sheets",
  "button:has(.univerjs-icon-more-icon.univer-rotate-180)": "Earlier sheets",
  "button:has(.univerjs-icon-more-icon:not(.univer-rotate-180))": "Later sheets",
};

/** Names them as they come and go. Its canvases take the keyboard by click alone, out of the page's own order. */
function nameControls(container: HTMLElement): void {
  const name = () => {
    for (const [selector, words] of Object.entries(NAMES)) {
      container
        .querySelectorAll(`${selector}:not([aria-label])`)
        .forEach((each) => each.setAttribute("aria-label", words));
    }
    container.querySelectorAll<HTMLElement>("canvas[tabindex='1']").forEach((each) => (each.tabIndex = -1));
  };
  new MutationObserver(name).observe(container, { subtree: true, childList: true });
  name();
}
