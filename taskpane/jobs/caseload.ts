import { parseSettings, type Settings } from "../../src/settings/settings";
import type { PageSubject } from "../../src/report/pages/make-page";
import { visitsAsked } from "../../src/tables/caseload/plan-visits";
import type { Told } from "../state/pane-state";
import { CHOOSE_THERAPIST, faultsInWords, pageLabel, toldOfList, toldOfPage } from "../words/caseload";
import { fieldMessages } from "../words/settings";
import type { CaseloadAsk } from "../worker/messages";
import { addMade } from "./add-made";
import { type JobTools, type Pane, runJob } from "./pane";
import { readInto } from "./read";

/** Reads the workbook as it stands now, and lists the children of the therapist chosen. */
export async function listChildren(pane: Pane): Promise<void> {
  const ask = askOf(pane);
  if (ask === null) return;
  await runJob(pane, "listing", async (tools) => {
    await readInto(pane, tools);
    return list(pane, ask, tools);
  });
}

/** Adds the page of a child, or of the whole caseload, as of the day and under the settings of the list. */
export async function addPage(pane: Pane, subject: PageSubject): Promise<void> {
  const { asked } = pane.store.state().caseload;
  if (asked === null || pane.abort) return;
  pane.store.dispatch({ type: "page forgotten" });
  await runJob(pane, "adding", async (tools) => {
    await readInto(pane, tools);
    const { settings, decisions, visits } = asked;
    const page = await pane.client.ask("page", { settings, decisions, visits, subject }, tools);
    const onMade = () => pane.store.dispatch({ type: "page made", page });
    const receipt = await addMade(pane, { of: "page", label: pageLabel(page), onMade }, tools);
    return toldOfPage(receipt);
  });
}

/** Shows every message of the fields, and gives what to ask where there is none. */
function askOf({ store }: Pane): CaseloadAsk | null {
  const { quarter, caseload, decisions } = store.state();
  const settings = settingsOf(quarter.entries);
  const visits = visitsAsked(caseload.visits);
  store.dispatch({ type: "entries seen", names: ["asOf"] });
  if (settings !== null && visits !== null) {
    return { settings, decisions: decisions.list, therapist: caseload.therapist, visits };
  }
  const messages = [...fieldMessages(quarter.entries)];
  store.dispatch({ type: "told", told: { tone: "stopped", text: faultsInWords(messages) } });
  store.dispatch({ type: "caseload refused" });
  return null;
}

/** Groups are of no account here: a column that is no longer there must not stop a list. */
function settingsOf(entries: object): Settings | null {
  const parsed = parseSettings({ ...entries, by: [] }, 1900);
  return "settings" in parsed && parsed.settings.asOf !== null ? parsed.settings : null;
}

async function list({ client, store }: Pane, ask: CaseloadAsk, tools: JobTools): Promise<Told> {
  const asked = { ...ask, decisions: store.state().decisions.list };
  const { found, listed } = await client.ask("caseload", asked, tools);
  store.dispatch({ type: "records read", found });
  if (found.failure !== null) return { tone: "stopped", text: found.failure };
  if (listed === null) {
    store.dispatch({ type: "caseload refused" });
    return { tone: "stopped", text: CHOOSE_THERAPIST };
  }
  store.dispatch({ type: "caseload listed", listed, asked });
  return toldOfList(listed);
}
