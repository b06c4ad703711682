import { toldOfFailure } from "../words/failures";
import type { Answer, Ask } from "../worker/messages";
import type { Pane } from "./pane";

/** Asks about one figure of the last report; null where that failed, which is then told. */
export async function figureAnswer<K extends "firm" | "behind">(
  { client, store }: Pane,
  kind: K,
  ask: Ask<K>,
): Promise<Answer<K> | null> {
  try {
    return await client.ask(kind, ask);
  } catch (error) {
    store.dispatch({ type: "told", told: toldOfFailure(error, "reading") });
    return null;
  }
}
