import { type Decision, isRepair, parseDecisions } from "../../src/records/corrections/decisions";
import { applyChoice } from "../../src/records/understanding/choices";
import { decisionsOf, fromFile, toFile } from "../../src/records/understanding/file";
import type { SameChild, Understanding } from "../../src/records/understanding/understanding";
import { SETTING_NAMES } from "../../src/settings/settings";
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

/** Everything stands as it is shown: it is kept, and the workbook is read that way. */
export async function confirmUnderstanding(pane: Pane): Promise<void> {
  const { store } = pane;
  const { understanding } = store.state();
  if (understanding === null || pane.abort) return;
  const messages = await keepDecisions(pane, decisionsOf(applyChoice(understanding, { kind: "confirm" })));
  if (messages.length === 0) store.dispatch({ type: "choices confirmed" });
  else store.dispatch({ type: "told", told: { tone: "stopped", text: messages.join(" ") } });
}

/** Two rows are one child: a choice like the others, confirmed with them. */
export async function joinChildren(pane: Pane, joined: SameChild): Promise<void> {
  try {
    if (!pane.handedOver) await checkAgain(pane);
    const decision = await pane.client.ask("joining", joined);
    pane.store.dispatch({ type: "choice made", made: { choice: { kind: "decision", decision }, joined } });
  } catch (error) {
    pane.store.dispatch({ type: "told", told: toldOfFailure(error, "reading") });
  }
}

/** Settings, understanding and corrections in one file, for the next quarter's workbook or for the command line. */
export async function saveCorrections(pane: Pane): Promise<void> {
  const { bookName } = pane.store.state();
  const fileName = `${bookName.replace(/\.xls[xm]$/i, "")}.windowline.json`;
  const text = `${JSON.stringify(fileOf(pane), null, 2)}\n`;
  try {
    const as = await pane.host.saveFile(fileName, new TextEncoder().encode(text), "application/json");
    pane.store.dispatch({ type: "corrections saved" });
    pane.store.dispatch({ type: "told", told: toldOfSaving(fileName, as) });
  } catch (error) {
    pane.store.dispatch({ type: "told", told: toldOfFailure(error, "saving") });
  }
}

/** What is only guessed is not kept as settled. The day is asked anew each quarter. */
function fileOf({ store }: Pane): object {
  const { understanding, decisions, quarter } = store.state();
  const entries = Object.entries(quarter.entries).filter(
    ([name, value]) => !OF_THE_QUARTER.has(name) && value.length > 0,
  );
  const settings = Object.fromEntries(entries);
  const isConfirmed = decisions.list.some(({ kind }) => kind === "sheet");
  return toFile(
    understanding && isConfirmed
      ? { ...understanding, settings }
      : { ...NOTHING_UNDERSTOOD, decisions: decisions.list, settings },
  );
}

const OF_THE_QUARTER: ReadonlySet<string> = new Set(["asOf", "from", "enteredBy"]);
const NOTHING_UNDERSTOOD: Understanding = {
  sheets: [],
  words: [],
  resultsNotShown: 0,
  areas: [],
  shortYears: null,
  names: [],
  sameChild: [],
  missing: [],
  skills: [],
  changes: [],
  decisions: [],
  settings: {},
};

/** Takes up a file of corrections; gives the messages where that cannot be. What was settled before is not lost then. */
export async function openCorrections(pane: Pane, text: string): Promise<readonly string[]> {
  const json = jsonOf(text);
  const isWhole = typeof json === "object" && json !== null && "windowline" in json;
  const read = isWhole ? fromFile(json) : parseDecisions(json);
  if ("messages" in read) return read.messages;
  const { store } = pane;
  const have = store.state().decisions.list.filter((each) => !isWhole || isRepair(each));
  const known = new Set(read.decisions.map((each) => JSON.stringify(each)));
  const list = [...read.decisions, ...have.filter((each) => !known.has(JSON.stringify(each)))];
  if (!pane.handedOver) await checkAgain(pane);
  const unfit = pane.handedOver ? await pane.client.ask("fits", { decisions: list }) : null;
  if (unfit !== null) return [unfit];
  store.dispatch({ type: "choices confirmed" });
  if ("settings" in read) takeSettings(pane, read.settings as Readonly<Record<string, unknown>>);
  return keepDecisions(pane, list);
}

function takeSettings({ store }: Pane, settings: Readonly<Record<string, unknown>>): void {
  for (const name of SETTING_NAMES) {
    const value = settings[name];
    if (value === undefined || value === null) continue;
    const written = Array.isArray(value) && name === "by" ? value.map(String) : String(value);
    store.dispatch({ type: "entry changed", name, value: written });
  }
}

function jsonOf(text: string): unknown {
  try {
    return JSON.parse(text) as unknown;
  } catch {
    return null;
  }
}
