import type { Receipt } from "../../src/workbook/host";
import type { MadeKind } from "../worker/messages";
import { toldOfRemoval, toldOfSaving } from "../words/report";
import { listReceipts, type Pane, runJob } from "./pane";

const XLSX = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";

/** Takes away what an earlier run added, and nothing else. */
export function removeAdded(pane: Pane, receipt: Receipt): Promise<void> {
  return runJob(pane, "removing", async (tools) => {
    tools.onProgress({ step: "Removing the sheets", done: 0, of: 0 });
    try {
      await pane.host.removeAdded(receipt, tools);
    } finally {
      await listReceipts(pane);
    }
    return toldOfRemoval(receipt);
  });
}

/** Hands the last report to the user as a file. */
export function saveReport(pane: Pane): Promise<void> {
  return save(pane, "report", pane.store.state().quarter.made);
}

/** The same for the last page. */
export function savePage(pane: Pane): Promise<void> {
  return save(pane, "page", pane.store.state().caseload.page);
}

/** The same for the last comparison. */
export function saveComparison(pane: Pane): Promise<void> {
  return save(pane, "comparison", pane.store.state().quarter.last.compared);
}

/** The figures of the last report as REPORT.json: next quarter's are compared with it. */
export function saveNumbers(pane: Pane): Promise<void> {
  return runJob(pane, "saving", async (tools) => {
    const { made } = pane.store.state().quarter;
    if (!made) return null;
    const bytes = await pane.client.ask("numbers", {}, tools);
    const fileName = made.fileName.replace(/xlsx$/, "json");
    await pane.host.downloadFile(fileName, bytes, "application/json");
    return toldOfSaving(fileName, "downloaded");
  });
}

const TEMPLATE = "windowline-template.xlsx";

/** Hands the user an empty workbook to keep records in. */
export function saveTemplate(pane: Pane): Promise<void> {
  return runJob(pane, "saving", async (tools) => {
    tools.onProgress({ step: "Writing the file", done: 0, of: 0 });
    const bytes = await pane.client.ask("template", {}, tools);
    return toldOfSaving(TEMPLATE, await pane.host.saveFile(TEMPLATE, bytes, XLSX, tools));
  });
}

function save(pane: Pane, of: MadeKind, made: { readonly fileName: string } | null): Promise<void> {
  return runJob(pane, "saving", async (tools) => {
    if (!made) return null;
    tools.onProgress({ step: "Writing the file", done: 0, of: 0 });
    const bytes = await pane.client.ask("file", { of }, tools);
    const as = await pane.host.saveFile(made.fileName, bytes, XLSX, tools);
    if (of !== "comparison") pane.store.dispatch({ type: of === "report" ? "report saved" : "page saved" });
    return toldOfSaving(made.fileName, as);
  });
}
