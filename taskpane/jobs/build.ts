import { parseSettings, type Settings } from "../../src/settings/settings";
import type { Told } from "../state/pane-state";
import { fieldMessages, MISSING_AS_OF, NO_TABLES, reportFaults } from "../words/settings";
import { toldOfLost } from "../words/last-quarter";
import { reportLabel, toldOfBuild } from "../words/report";
import { addMade } from "./add-made";
import { type JobTools, type Pane, runJob } from "./pane";
import { readInto } from "./read";

/**
 * Reads the workbook as it stands now, makes the report, and adds its sheets: all of them, or none.
 *
 * @param goesOn - the person knows that rows are missing which the last report had
 */
export async function buildReport(pane: Pane, goesOn = false): Promise<void> {
  const settings = settingsOrTell(pane, true);
  if (settings === null) return;
  const { dispatch } = pane.store;
  dispatch({ type: "report forgotten" });
  await runJob(pane, "building", async (tools) => {
    await readInto(pane, tools);
    return make(pane, settings, goesOn, tools);
  });
}

/** Shows every message of the fields, and gives the settings where there is none. */
export function settingsOrTell({ store }: Pane, needsTables = false): Settings | null {
  const { entries, tables } = store.state().quarter;
  const parsed = parseSettings(entries, 1900);
  store.dispatch({ type: "entries seen", names: ["asOf", ...fieldMessages(entries).keys()] });
  const hasTables = !needsTables || tables.length > 0;
  if ("settings" in parsed && parsed.settings.asOf !== null && hasTables) return parsed.settings;
  const text = "messages" in parsed ? reportFaults(fieldMessages(entries)) : MISSING_AS_OF;
  const lacksTables = "settings" in parsed && parsed.settings.asOf !== null;
  store.dispatch({ type: "told", told: { tone: "stopped", text: lacksTables ? NO_TABLES : text } });
  store.dispatch({ type: "build refused" });
  return null;
}

async function make(pane: Pane, settings: Settings, goesOn: boolean, tools: JobTools): Promise<Told> {
  const { client, store } = pane;
  const { decisions, quarter } = store.state();
  const { file } = quarter.last;
  const last = file && file.kind !== "workbook" ? file.bytes : null;
  const ask = { settings, decisions: decisions.list, tables: quarter.tables, last, goesOn };
  const { found, made, lost } = await client.ask("build", ask, tools);
  store.dispatch({ type: "records read", found });
  store.dispatch({ type: "rows lost", lost });
  if (lost.length > 0) return toldOfLost(lost);
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
