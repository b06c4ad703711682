import { type Decision, parseDecisions } from "../../src/records/corrections/decisions";
import { toldOfFailure } from "../words/failures";
import type { Pane } from "./pane";
import { checkAgain } from "./read";

/** Takes up the decisions that the workbook keeps. */
export async function loadDecisions(pane: Pane): Promise<void> {
  const kept = await pane.host.loadDecisions();
  const parsed = kept === null || kept === undefined ? { decisions: [] } : parseDecisions(kept);
  if ("messages" in parsed) pane.store.dispatch({ type: "decisions loaded", list: [], messages: parsed.messages });
  else pane.store.dispatch({ type: "decisions loaded", list: parsed.decisions, messages: [] });
}

/** Keeps the decisions, and judges the records again under them. Gives the messages where they cannot stand together. */
export async function keepDecisions(pane: Pane, list: readonly Decision[]): Promise<readonly string[]> {
  const parsed = parseDecisions(list);
  if ("messages" in parsed) return parsed.messages;
  try {
    await pane.host.saveDecisions({ decisions: parsed.decisions });
  } catch (error) {
    return [toldOfFailure(error, "saving").text];
  }
  const { store } = pane;
  store.dispatch({ type: "decisions changed", list: parsed.decisions });
  if (store.state().found) await checkAgain(pane);
  return [];
}

/** The decisions as a file, for the next quarter's workbook or for the command line. */
export async function saveDecisionsFile(pane: Pane): Promise<void> {
  const text = `${JSON.stringify({ decisions: pane.store.state().decisions.list }, null, 2)}\n`;
  try {
    await pane.host.saveFile("decisions.json", new TextEncoder().encode(text), "application/json");
    pane.store.dispatch({ type: "told", told: { tone: "done", text: "Saved as decisions.json." } });
  } catch (error) {
    pane.store.dispatch({ type: "told", told: toldOfFailure(error, "saving") });
  }
}

/** Adds the decisions of a file to those there are; gives the messages where that cannot be. */
export async function takeOverDecisions(pane: Pane, text: string): Promise<readonly string[]> {
  const parsed = parseDecisions(jsonOf(text));
  if ("messages" in parsed) return parsed.messages;
  const have = pane.store.state().decisions.list;
  const known = new Set(have.map((each) => JSON.stringify(each)));
  return keepDecisions(pane, [...have, ...parsed.decisions.filter((each) => !known.has(JSON.stringify(each)))]);
}

function jsonOf(text: string): unknown {
  try {
    return JSON.parse(text) as unknown;
  } catch {
    return null;
  }
}
