import { toldOfFailure } from "../words/failures";
import { loadDecisions } from "./decisions";
import type { Pane } from "./pane";

/** What the pane knows before anything is asked of it: no cell of the records is read. */
export async function openPane(pane: Pane): Promise<void> {
  const { host, client, store } = pane;
  try {
    store.dispatch({ type: "choices known", choices: await client.ask("choices", {}) });
    store.dispatch({ type: "book named", name: await host.name() });
    store.dispatch({ type: "receipts known", receipts: await host.receipts() });
    await loadDecisions(pane);
  } catch (error) {
    store.dispatch({ type: "told", told: toldOfFailure(error, "reading") });
  }
}
