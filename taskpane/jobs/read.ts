import { parseSettings, type Settings, usualSettings } from "../../src/settings/settings";
import { HostFailure } from "../../src/workbook/host";
import { handOver } from "../client/hand-over";
import type { Entries } from "../state/pane-state";
import { correctionsUnread } from "../words/failures";
import { toldOfReading } from "../words/records";
import { loadDecisions } from "./load-decisions";
import { type JobTools, type Pane, runJob } from "./pane";

/** Reads the workbook afresh and lists what was found. */
export function readWorkbook(pane: Pane): Promise<void> {
  return runJob(pane, "reading", async (tools) => {
    await readInto(pane, tools);
    return check(pane, tools);
  });
}

/** Judges the records again under other decisions or settings, without reading the cells again where they are still held. */
export function checkAgain(pane: Pane): Promise<void> {
  return runJob(pane, "reading", async (tools) => {
    if (!pane.handedOver) await readInto(pane, tools);
    return check(pane, tools);
  });
}

export async function readInto(pane: Pane, tools: JobTools): Promise<void> {
  pane.handedOver = null;
  tools.onProgress({ step: "Reading the workbook", done: 0, of: 0 });
  await loadDecisions(pane, tools).catch((error: unknown) => {
    throw error instanceof HostFailure ? new HostFailure(error.kind, correctionsUnread(error.message)) : error;
  });
  const workbook = await pane.host.read(tools);
  pane.handedOver = await handOver(pane.client, workbook, tools);
}

async function check(pane: Pane, tools: JobTools) {
  tools.onProgress({ step: "Looking at every row", done: 0, of: 0 });
  const { quarter, decisions } = pane.store.state();
  const ask = { settings: readableSettings(quarter.entries), decisions: decisions.list };
  const found = await pane.client.ask("check", ask, tools);
  pane.store.dispatch({ type: "records read", found });
  return toldOfReading(found);
}

/** Records can be looked at before every field is right: a field that is not counts as left out. */
export function readableSettings(entries: Entries): Settings {
  const parsed = parseSettings(entries, 1900);
  if ("settings" in parsed) return parsed.settings;
  const names = Object.keys(entries).filter((name) => {
    const alone = parseSettings({ [name]: entries[name as keyof Entries] }, 1900);
    return "settings" in alone;
  });
  const good = parseSettings(Object.fromEntries(names.map((name) => [name, entries[name as keyof Entries]])), 1900);
  return "settings" in good ? good.settings : usualSettings;
}
