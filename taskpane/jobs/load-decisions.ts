import { parseDecisions } from "../../src/records/corrections/decisions";
import { toldOfFailure } from "../words/failures";
import type { JobTools, Pane } from "./pane";

/** Takes up the decisions that the workbook keeps. Where it does not hand them over, that is shown, and thrown on. */
export async function loadDecisions(pane: Pane, options?: JobTools): Promise<void> {
  const { dispatch, state } = pane.store;
  const kept = await pane.host.loadDecisions(options).catch((error: unknown) => {
    if (!options?.signal.aborted) dispatch({ type: "decisions unread", why: toldOfFailure(error, "reading").text });
    throw error;
  });
  const parsed = kept === null || kept === undefined ? { decisions: [] } : parseDecisions(kept);
  if ("messages" in parsed) return dispatch({ type: "decisions loaded", list: [], messages: parsed.messages });
  const { list, messages } = state().decisions;
  const isNew = messages.length > 0 || JSON.stringify(list) !== JSON.stringify(parsed.decisions);
  if (isNew && state().found) dispatch({ type: "decisions changed", list: parsed.decisions });
  else dispatch({ type: "decisions loaded", list: parsed.decisions, messages: [] });
}
