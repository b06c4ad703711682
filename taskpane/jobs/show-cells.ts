import { toldOfFailure } from "../words/failures";
import type { Pane } from "./pane";

export async function showCell({ host, store }: Pane, sheet: string, cell: string): Promise<void> {
  try {
    await host.showCell(sheet, cell);
    store.dispatch({ type: "told", told: null });
  } catch (error) {
    store.dispatch({ type: "told", told: toldOfFailure(error, "reading") });
  }
}

/** Lists the next cells of a group of findings. */
export async function moreCells({ client, store }: Pane, group: number): Promise<void> {
  const from = store.state().found?.groups[group]?.cells.length ?? 0;
  const cells = await client.ask("cells", { group, from });
  store.dispatch({ type: "cells shown", group, cells });
}
