import { createRoot } from "react-dom/client";
import { config } from "zod";
import type { WorkbookHost } from "../src/workbook/host";
import { WorkClient, type WorkerLike } from "./client/work-client";
import { openPane } from "./jobs/open";
import type { Pane } from "./jobs/pane";
import { initialState, reducePane } from "./state/pane-reducer";
import { createStore } from "./state/store";
import { unsavedIn } from "./state/unsaved";
import { actionsOf } from "./views/actions";
import { PaneApp } from "./views/pane-app";

export interface MountOptions {
  /** Whether the office around it is dark; the system's own preference when left out. */
  readonly dark?: boolean;
  /** A worker of another making, for tests. */
  readonly startWorker?: () => WorkerLike;
}

export interface MountedPane {
  readonly unmount: () => void;
  /** What would be lost with the pane, as a person would name it. */
  readonly unsaved: () => readonly string[];
}

/** Fills an element with the task pane. */
export function mountPane(root: HTMLElement, host: WorkbookHost, options: MountOptions = {}): MountedPane {
  // zod would otherwise ask whether it may compile, which a strict policy reports.
  config({ jitless: true });
  const pane = paneOver(host, options.startWorker ?? startWorker);
  const view = createRoot(root);
  view.render(
    <PaneApp
      store={pane.store}
      actions={actionsOf(pane)}
      {...(options.dark === undefined ? {} : { dark: options.dark })}
    />,
  );
  const stopListening = host.onEdit?.(() => pane.store.dispatch({ type: "records edited" }));
  void openPane(pane);
  return {
    unsaved: () => unsavedIn(pane.store.state()),
    unmount: () => {
      stopListening?.();
      pane.abort?.abort();
      pane.client.stop(new Error("The pane was closed."));
      view.unmount();
    },
  };
}

function paneOver(host: WorkbookHost, start: () => WorkerLike): Pane {
  const store = createStore(reducePane, initialState);
  const client = new WorkClient(start, () => {
    pane.handedOver = null;
    store.dispatch({ type: "report forgotten" });
    store.dispatch({ type: "page forgotten" });
    store.dispatch({ type: "comparison forgotten" });
    store.dispatch({ type: "release forgotten" });
  });
  const pane: Pane = { host, client, store, abort: null, handedOver: null };
  return pane;
}

function startWorker(): WorkerLike {
  return new Worker(new URL("./worker/start-worker.ts", import.meta.url), { name: "pane-worker" }) as WorkerLike;
}
