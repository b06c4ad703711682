import { CellMessages } from "../functions/messages";
import { WorkerCalls } from "../../../../functions/elsewhere/worker-calls";
import { createGrid } from "./create-grid";
import { nameControls } from "./name-controls";
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
