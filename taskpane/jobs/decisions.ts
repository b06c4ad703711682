import { type Decision, parseDecisions } from "../../src/records/corrections/decisions";
import { toldOfFailure } from "../words/failures";
import { toldOfSaving } from "../words/report";
import { loadDecisions } from "./load-decisions";
import type { Pane } from "./pane";
import { checkAgain } from "./read";

/** Keeps the decisions, and judges the records again under them. Gives the messages where they cannot stand together. */
export async function keepDecisions(pane: Pane, list: readonly Decision[]): Promise<readonly string[]> {
  const { store } = pane;
  try {
    const parsed = parseDecisions(await besideUnread(pane, list));
    if ("messages" in parsed) return parsed.messages;
    await pane.host.saveDecisions({ decisions: parsed.decisions });
    store.dispatch({ type: "decisions changed", list: parsed.decisions });
    // what a person wrote on their sheet meanwhile is taken up too
    await loadDecisions(pane);
  } catch (error) {
    return [toldOfFailure(error, "saving").text];
  }
  if (store.state().found) await checkAgain(pane);
  return [];
}

/** Nothing is kept over decisions that were not loaded: they are asked for once more, and the new ones put beside them. */
async function besideUnread(pane: Pane, list: readonly Decision[]): Promise<readonly Decision[]> {
  const { state } = pane.store;
  if (state().decisions.unread === null) return list;
  await loadDecisions(pane);
  const { list: loaded } = state().decisions;
  const known = new Set(loaded.map((each) => JSON.stringify(each)));
  return [...loaded, ...list.filter((each) => !known.has(JSON.stringify(each)))];
}

const FILE_NAME = "decisions.json";

/** The decisions as a file, for the next quarter's workbook or for the command line. */
export async function saveDecisionsFile(pane: Pane): Promise<void> {
  const text = `${JSON.stringify({ decisions: pane.store.state().decisions.list }, null, 2)}\n`;
  try {
    const as = await pane.host.saveFile(FILE_NAME, new TextEncoder().encode(text), "application/json");
    pane.store.dispatch({ type: "corrections saved" });
    pane.store.dispatch({ type: "told", told: toldOfSaving(FILE_NAME, as) });
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
