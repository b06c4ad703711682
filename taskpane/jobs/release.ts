import { parseSettings } from "../../src/settings/settings";
import { toldOfFailure } from "../words/failures";
import {
  FORMATS,
  LONGEST_PROSE,
  NO_TABLES_TO_RELEASE,
  PROSE_TOO_LONG,
  releaseFaults,
  TOLD_OF_REFUSAL,
  TOLD_OF_RELEASE,
  toldOfLedger,
  toldOfProse,
  toldOfTries,
} from "../words/release";
import { toldOfSaving } from "../words/report";
import { fieldMessages } from "../words/settings";
import type { ReleaseAsk, ReleaseFormat, TriedWay } from "../worker/release/released";
import type { Told } from "../state/pane-state";
import { type JobTools, type Pane, runJob } from "./pane";
import { readInto } from "./read";

/** Reads the workbook as it stands now, and prepares the release: protected and attacked, and nothing of it written. */
export async function prepare(pane: Pane): Promise<void> {
  const ask = askOf(pane);
  if (ask === null || pane.abort) return;
  pane.store.dispatch({ type: "release asked" });
  await runJob(pane, "preparing", async (tools) => {
    await readInto(pane, tools);
    return protect(pane, ask, tools);
  });
}

/** Tries longer periods, fewer age groups and no groups, and shows what each would show; the release stays as it is. */
export async function tryMore(pane: Pane): Promise<void> {
  const ask = askOf(pane);
  if (ask === null || pane.abort) return;
  await runJob(pane, "trying", async (tools) => {
    await readInto(pane, tools);
    const { store, client } = pane;
    const asked = { ...ask, decisions: store.state().decisions.list };
    const { found, ways } = await client.ask("releaseTries", asked, tools);
    store.dispatch({ type: "records read", found });
    if (ways === null) return { tone: "stopped", text: found.failure ?? "The records cannot be used." };
    store.dispatch({ type: "release tried", ways });
    return toldOfTries(ways);
  });
}

/** Asks the other way that was seen to show more. */
export async function prepareThatWay(pane: Pane, { entries }: TriedWay): Promise<void> {
  if (pane.abort) return;
  for (const name of ["edges", "from", "by"] as const) {
    pane.store.dispatch({ type: "entry changed", name, value: entries[name] });
  }
  await prepare(pane);
}

/** Takes up a ledger that the user picked; it stays in the pane. */
export async function openLedger(pane: Pane, file: Pick<File, "name" | "text">): Promise<void> {
  await runJob(pane, "opening", async (tools) => {
    tools.onProgress({ step: "Checking the release log", done: 0, of: 0 });
    const text = await file.text();
    const read = await pane.client.ask("ledger", { text }, tools);
    if ("message" in read) return { tone: "stopped", text: read.message };
    const { releases, lines, last } = read;
    pane.store.dispatch({ type: "ledger opened", ledger: { fileName: file.name, text, releases, lines, last } });
    return null;
  });
}

/** Hands a file of the release to the user; `opened` as a new workbook where the host is Excel. */
export function saveRelease(pane: Pane, format: ReleaseFormat, as: "file" | "opened"): Promise<void> {
  const { made, isOld } = pane.store.state().release;
  return runJob(pane, "saving", async (tools) => {
    if (!made || isOld) return null;
    tools.onProgress({ step: "Writing the file, and searching it", done: 0, of: 0 });
    const bytes = await pane.client.ask("releaseFile", { format }, tools);
    const { ending, mimeType } = FORMATS[format];
    const fileName = `${made.stem}${ending}`;
    const { host, store } = pane;
    if (as === "file") await host.downloadFile(fileName, bytes, mimeType);
    const savedAs = as === "file" ? "downloaded" : await host.saveFile(fileName, bytes, mimeType, tools);
    store.dispatch({ type: "release saved" });
    return toldOfSaving(fileName, savedAs);
  });
}

/** The ledger with this release as its last; from then on it is the one that is open. */
export function saveLedger(pane: Pane): Promise<void> {
  return runJob(pane, "saving", async (tools) => {
    const { made, isOld, ledger } = pane.store.state().release;
    if (!made || isOld) return null;
    const bytes = await pane.client.ask("releaseFile", { format: "ledger" }, tools);
    const text = new TextDecoder().decode(bytes);
    const read = await pane.client.ask("ledger", { text }, tools);
    if ("message" in read) return { tone: "stopped", text: read.message };
    const fileName = ledger?.fileName ?? NEW_LEDGER;
    await pane.host.downloadFile(fileName, bytes, "application/json");
    const { releases, lines, last } = read;
    pane.store.dispatch({ type: "ledger saved", ledger: { fileName, text, releases, lines, last } });
    return toldOfLedger(fileName);
  });
}

/** Holds a text against the release; the records are read again where they are held no longer. */
export async function checkProse(pane: Pane): Promise<void> {
  const { prose, made } = pane.store.state().release;
  if (!made || prose.trim() === "") return;
  if (prose.length > LONGEST_PROSE) return pane.store.dispatch({ type: "told", told: PROSE_TOO_LONG });
  await runJob(pane, "checking", async (tools) => {
    if (!pane.handedOver) await readInto(pane, tools);
    const checked = await pane.client.ask("prose", { text: prose }, tools);
    pane.store.dispatch({ type: "prose checked", checked });
    return toldOfProse(checked.findings);
  });
}

/** The next rows, or sentences, of a table of the release. */
export async function releasePart<K extends "releaseRows" | "releaseSentences">(
  { client, store }: Pane,
  kind: K,
  table: number,
  from: number,
) {
  try {
    return await client.ask(kind, { table, from });
  } catch (error) {
    store.dispatch({ type: "told", told: toldOfFailure(error, "preparing") });
    return [];
  }
}

const NEW_LEDGER = "release-ledger.json";

/** Shows every message of the fields, and gives what to ask where there is none. */
function askOf({ store }: Pane): ReleaseAsk | null {
  const { quarter, release, decisions } = store.state();
  const parsed = parseSettings(quarter.entries, 1900);
  const messages = fieldMessages(quarter.entries);
  store.dispatch({ type: "entries seen", names: ["asOf", ...messages.keys()] });
  if ("settings" in parsed && messages.size === 0 && release.tables.length > 0) {
    const ledger = release.ledger?.text ?? null;
    const questions = release.questions.map(({ id }) => id);
    return { settings: parsed.settings, decisions: decisions.list, tables: release.tables, questions, ledger };
  }
  const text = messages.size === 0 ? NO_TABLES_TO_RELEASE : releaseFaults(messages);
  store.dispatch({ type: "told", told: { tone: "stopped", text } });
  store.dispatch({ type: "release refused by a field" });
  return null;
}

async function protect({ client, store }: Pane, ask: ReleaseAsk, tools: JobTools): Promise<Told> {
  const asked = { ...ask, decisions: store.state().decisions.list };
  const { found, outcome } = await client.ask("release", asked, tools);
  store.dispatch({ type: "records read", found });
  if (outcome === null) return { tone: "stopped", text: found.failure ?? "The records cannot be used." };
  if (outcome.kind === "refused") {
    store.dispatch({ type: "release refused", refusal: outcome.refused });
    return TOLD_OF_REFUSAL;
  }
  store.dispatch({ type: "release made", made: outcome.made });
  return TOLD_OF_RELEASE;
}
