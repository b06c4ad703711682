import type { WorkbookHost } from "../../src/workbook/host";
import { WorkClient } from "../../taskpane/client/work-client";
import type { Pane } from "../../taskpane/jobs/pane";
import { initialState, reducePane } from "../../taskpane/state/pane-reducer";
import { createStore } from "../../taskpane/state/store";
import type { WorkTools } from "../../taskpane/worker/work";
import { InProcessWorker } from "./in-process-worker";

export interface TestPane {
  readonly pane: Pane;
  readonly workers: readonly InProcessWorker[];
}

/** A pane without its views. */
export function paneOver(host: WorkbookHost, tools: Partial<WorkTools> = {}): TestPane {
  const workers: InProcessWorker[] = [];
  const store = createStore(reducePane, initialState);
  const start = () => {
    const worker = new InProcessWorker(tools);
    workers.push(worker);
    return worker;
  };
  const client = new WorkClient(start, () => {
    pane.handedOver = null;
    store.dispatch({ type: "report forgotten" });
    store.dispatch({ type: "page forgotten" });
    store.dispatch({ type: "comparison forgotten" });
    store.dispatch({ type: "release forgotten" });
  });
  const pane: Pane = { host, client, store, abort: null, handedOver: null };
  return { pane, workers };
}
