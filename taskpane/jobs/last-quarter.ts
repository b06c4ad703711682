import { dayFromIso, isoOf } from "../../src/age/day";
import { firstDayOfQuarter, type Settings } from "../../src/settings/settings";
import type { Told } from "../state/pane-state";
import {
  comparisonLabel,
  DAY_MISSING,
  toldOfAgain,
  toldOfComparison,
  toldOfComparisonAdded,
} from "../words/last-quarter";
import { addMade } from "./add-made";
import { settingsOrTell } from "./build";
import { type JobTools, type Pane, runJob } from "./pane";
import { readInto } from "./read";

/** Takes up the file of last quarter: its workbook, or a report of it. It stays in the pane. */
export function chooseLast(pane: Pane, file: Pick<File, "name" | "arrayBuffer">): Promise<void> {
  return runJob(pane, "comparing", async (tools) => {
    tools.onProgress({ step: "Reading the file", done: 0, of: 0 });
    const bytes = new Uint8Array(await file.arrayBuffer());
    const read = await pane.client.ask("last", { bytes }, tools);
    const asOf = read.asOf ?? lastDayBefore(pane);
    pane.store.dispatch({ type: "last chosen", file: { ...read, name: file.name, bytes }, asOf });
    return null;
  });
}

/** The last day of the quarter before the one that the figures are for. */
function lastDayBefore({ store }: Pane): string {
  const { quarter, found } = store.state();
  const asOf = dayFromIso(String(quarter.entries.asOf ?? found?.quarterEnd ?? ""));
  return asOf === null ? "" : isoOf(firstDayOfQuarter(asOf) - 1);
}

/** Says why the figures are not what they were. */
export async function compare(pane: Pane): Promise<void> {
  const settings = settingsOrTell(pane);
  if (settings === null) return;
  pane.store.dispatch({ type: "comparison forgotten" });
  await runJob(pane, "comparing", (tools) => compareInto(pane, settings, tools));
}

/** Adds the comparison to the workbook, made anew from what the workbook says now. */
export async function addComparison(pane: Pane): Promise<void> {
  const settings = settingsOrTell(pane);
  if (settings === null) return;
  await runJob(pane, "comparing", async (tools) => {
    const told = await compareInto(pane, settings, tools);
    const { compared } = pane.store.state().quarter.last;
    if (told.tone === "stopped" || compared === null) return told;
    const made = { of: "comparison", label: comparisonLabel(compared), onMade: () => undefined } as const;
    return toldOfComparisonAdded(await addMade(pane, made, tools));
  });
}

async function compareInto(pane: Pane, settings: Settings, tools: JobTools): Promise<Told> {
  const { client, store } = pane;
  const { file, asOf } = store.state().quarter.last;
  if (file === null) return { tone: "stopped", text: DAY_MISSING };
  const earlierAsOf = dayFromIso(asOf);
  if (file.kind === "workbook" && earlierAsOf === null) return { tone: "stopped", text: DAY_MISSING };
  await readInto(pane, tools);
  const ask = { settings, decisions: store.state().decisions.list, bytes: file.bytes, earlierAsOf };
  const { found, compared, lost } = await client.ask("compare", ask, tools);
  store.dispatch({ type: "records read", found });
  if (compared === null) return { tone: "stopped", text: found.failure ?? "The records cannot be used." };
  store.dispatch({ type: "comparison made", compared, lost });
  return toldOfComparison(compared);
}

/** Makes the report of the file again, and says whether it is the same. */
export function repeatLast(pane: Pane): Promise<void> {
  return runJob(pane, "repeating", async (tools) => {
    const { file } = pane.store.state().quarter.last;
    if (file === null) return null;
    await readInto(pane, tools);
    const ask = { bytes: file.bytes, decisions: pane.store.state().decisions.list };
    const again = await pane.client.ask("again", ask, tools);
    pane.store.dispatch({ type: "report made again", again });
    return toldOfAgain(again);
  });
}
