import { HostFailure, type WorkbookHost } from "../../src/workbook/host";
import type { HandedOver } from "../client/hand-over";
import type { WorkClient } from "../client/work-client";
import type { JobKind, PaneAction, PaneState, Told } from "../state/pane-state";
import type { Store } from "../state/store";
import { Cancelled, toldOfFailure, toldOfSlowCancel } from "../words/failures";

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
  const slow = slowCancel(abort.signal);
  try {
    told = await Promise.race([job({ signal: abort.signal, onProgress }), slow.told(kind)]);
  } catch (error) {
    told = toldOfFailure(error, kind);
    if (error instanceof HostFailure && error.later) void tellLater(pane, error.later);
  }
  slow.forget();
  pane.abort = null;
  dispatch({ type: "job ended", told });
}

/** A cancel is obeyed within two seconds, whatever the job waits for. */
const MOST_MS_TO_CANCEL = 1_900;

function slowCancel(signal: AbortSignal) {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const told = (kind: JobKind) =>
    new Promise<Told>((resolve) => {
      const wait = () => (timer = setTimeout(() => resolve(toldOfSlowCancel(kind)), MOST_MS_TO_CANCEL));
      signal.addEventListener("abort", wait, { once: true });
    });
  return { told, forget: () => clearTimeout(timer) };
}

/** What the host finished after its job had ended. */
async function tellLater(pane: Pane, later: Promise<string>): Promise<void> {
  const text = await later;
  await listReceipts(pane);
  if (!pane.abort) pane.store.dispatch({ type: "told", told: { tone: "done", text } });
}

export function cancelJob(pane: Pane): void {
  if (!pane.abort) return;
  pane.store.dispatch({ type: "job cancelling" });
  pane.abort.abort(new Cancelled());
}

/** Lists what was added, and says so where that cannot be read: what was made before stands either way. */
export async function listReceipts(pane: Pane): Promise<void> {
  try {
    pane.store.dispatch({ type: "receipts known", receipts: await pane.host.receipts() });
  } catch (error) {
    pane.store.dispatch({ type: "receipts unread", why: toldOfFailure(error, "reading").text });
  }
}
