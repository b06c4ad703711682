import type { PageState } from "./page-state";

export interface GridCoverProps {
  readonly state: PageState;
  readonly dropping: boolean;
  readonly onOpenSample: () => void;
}

/** What lies over the grid while there is nothing in it to work on, or a file hovers above it. */
export function GridCover({ state, dropping, onOpenSample }: GridCoverProps) {
  if (dropping)
    return <Cover title="Drop the workbook here, or several" text="They are read on this machine and sent nowhere." />;
  if (state.at === "loading") return <Cover title={state.step} busy />;
  if (state.at === "failed") {
    return (
      <Cover title="The workbook could not be opened" text={state.message}>
        <button type="button" onClick={onOpenSample}>
          Open the sample
        </button>
      </Cover>
    );
  }
  return null;
}

/** Said above an empty grid, which stays usable. */
export function EmptyHint({ state }: { readonly state: PageState }) {
  if (state.at !== "ready" || !state.isEmpty) return null;
  return (
    <p className="hint" role="status">
      This workbook has no cells yet. Open another, drop one here, or open the sample to see example tables.
    </p>
  );
}

interface CoverProps {
  readonly title: string;
  readonly text?: string;
  readonly busy?: boolean;
  readonly children?: React.ReactNode;
}

function Cover({ title, text, busy = false, children }: CoverProps) {
  return (
    <div className="cover" role={busy ? "status" : "alert"} aria-busy={busy}>
      <div className="cover-words">
        {busy && <div className="cover-line" aria-hidden="true" />}
        <p className="cover-title">{title}</p>
        {text !== undefined && <p>{text}</p>}
        {children}
      </div>
    </div>
  );
}
