import { toldOfFailure } from "../words/failures";
import { loadDecisions } from "./load-decisions";
import { listReceipts, type Pane } from "./pane";

/** What the pane knows before anything is asked of it: no cell of the records is read. One failure keeps nothing else from being known. */
export async function openPane(pane: Pane): Promise<void> {
  const { host, client, store } = pane;
  const told = async (what: () => Promise<void>) => {
    await what().catch((error: unknown) => store.dispatch({ type: "told", told: toldOfFailure(error, "reading") }));
  };
  await told(async () => store.dispatch({ type: "choices known", choices: await client.ask("choices", {}) }));
  await told(async () => store.dispatch({ type: "book named", name: await host.name() }));
  await listReceipts(pane);
  await loadDecisions(pane).catch(() => undefined);
}
