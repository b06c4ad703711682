import { parseSettings, type Settings } from "../../src/settings/settings";
import type { Told } from "../state/pane-state";
import { fieldMessages, MISSING_AS_OF, NO_TABLES, reportFaults } from "../words/settings";
import { reportLabel, toldOfBuild } from "../words/report";
import { addMade } from "./add-made";
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
  const text = "messages" in parsed ? reportFaults(fieldMessages(entries)) : MISSING_AS_OF;
  const lacksTables = "settings" in parsed && parsed.settings.asOf !== null;
  store.dispatch({ type: "told", told: { tone: "stopped", text: lacksTables ? NO_TABLES : text } });
  store.dispatch({ type: "build refused" });
  return null;
}

async function make(pane: Pane, settings: Settings, tools: JobTools): Promise<Told> {
  const { client, store } = pane;
  const { decisions, quarter } = store.state();
  const ask = { settings, decisions: decisions.list, tables: quarter.tables };
  const { found, made } = await client.ask("build", ask, tools);
  store.dispatch({ type: "records read", found });
  if (made === null) return { tone: "stopped", text: found.failure ?? "The records cannot be used." };
  const onMade = () => store.dispatch({ type: "report made", made });
  const receipt = await addMade(pane, { of: "report", label: reportLabel(made), onMade }, tools);
  const [firstSheet] = receipt.sheets;
  if (firstSheet !== undefined) {
    store.dispatch({ type: "report added", firstSheet });
    // The page is there whether or not the host can bring it into sight.
    await pane.host.showCell(firstSheet, "A1", "in sight").catch(() => undefined);
  }
  return toldOfBuild(made, receipt);
}
