import type { WorkbookHost } from "../../src/workbook/host";
import type { HandedOver } from "../client/hand-over";
import type { WorkClient } from "../client/work-client";
import type { JobKind, PaneAction, PaneState, Told } from "../state/pane-state";
import type { Store } from "../state/store";
import { Cancelled, toldOfFailure } from "../words/failures";

/** What every job works with. */
export interface Pane {
  readonly host: WorkbookHost;
  readonly client: WorkClient;
  readonly store: Store<PaneState, PaneAction>;
  /** The running job's; null between jobs. */
  abort: AbortController | null;
  /** The workbook whose columns the worker holds. */
  handedOver: HandedOver | null;
}

export interface JobTools {
  readonly signal: AbortSignal;
  readonly onProgress: (progress: { readonly step: string; readonly done: number; readonly of: number }) => void;
}

/** Runs one job at a time, shows how far it is, and tells how it ended. */
export async function runJob(pane: Pane, kind: JobKind, job: (tools: JobTools) => Promise<Told | null>): Promise<void> {
  if (pane.abort) return;
  const { dispatch } = pane.store;
  const abort = (pane.abort = new AbortController());
  dispatch({ type: "job started", kind });
  const onProgress: JobTools["onProgress"] = (progress) => dispatch({ type: "job moved", progress });
  let told: Told | null;
  try {
    told = await job({ signal: abort.signal, onProgress });
  } catch (error) {
    told = toldOfFailure(error, kind);
  }
  pane.abort = null;
  dispatch({ type: "job ended", told });
}

export function cancelJob(pane: Pane): void {
  if (!pane.abort) return;
  pane.store.dispatch({ type: "job cancelling" });
  pane.abort.abort(new Cancelled());
}
