import { parseSettings, type Settings } from "../../src/settings/settings";
import { takeBack, takeSheets } from "../client/hand-over";
import type { Told } from "../state/pane-state";
import { fieldMessages, MISSING_AS_OF, NO_TABLES } from "../words/settings";
import { toldOfBuild } from "../words/report";
import { type JobTools, type Pane, runJob } from "./pane";
import { readInto } from "./read";

/** Reads the workbook as it stands now, makes the report, and adds its sheets: all of them, or none. */
export async function buildReport(pane: Pane): Promise<void> {
  const settings = settingsToBuild(pane);
  if (settings === null) return;
  const { dispatch } = pane.store;
  dispatch({ type: "report forgotten" });
  await runJob(pane, "building", async (tools) => {
    await readInto(pane, tools);
    return make(pane, settings, tools);
  });
}

/** Shows every message of the fields, and gives the settings where there is none. */
function settingsToBuild({ store }: Pane): Settings | null {
  const { entries, tables } = store.state().quarter;
  const parsed = parseSettings(entries, 1900);
  store.dispatch({ type: "entries seen", names: ["asOf", ...fieldMessages(entries).keys()] });
  if ("settings" in parsed && parsed.settings.asOf !== null && tables.length > 0) return parsed.settings;
  const text = "messages" in parsed ? "Some fields need a look before the report can be made." : MISSING_AS_OF;
  const lacksTables = "settings" in parsed && parsed.settings.asOf !== null;
  store.dispatch({ type: "told", told: { tone: "stopped", text: lacksTables ? NO_TABLES : text } });
  store.dispatch({ type: "build refused" });
  return null;
}

async function make(pane: Pane, settings: Settings, tools: JobTools): Promise<Told> {
  const { host, client, store } = pane;
  const { decisions, quarter } = store.state();
  const ask = { settings, decisions: decisions.list, tables: quarter.tables };
  const { found, made } = await client.ask("build", ask, tools);
  store.dispatch({ type: "records read", found });
  if (made === null) return { tone: "stopped", text: found.failure ?? "The records cannot be used." };
  const sheets = await takeSheets(client, tools);
  const read = await takeBack(client, pane.handedOver ?? { dateSystem: 1900, sheets: [] }, tools);
  pane.handedOver = null;
  tools.onProgress({ step: "Adding the sheets", done: 0, of: sheets.length });
  const receipt = await host.addSheets(sheets, read, made.label, tools);
  store.dispatch({ type: "report made", made });
  store.dispatch({ type: "receipts known", receipts: await host.receipts() });
  return toldOfBuild(made, receipt);
}
