import { type ChangeEvent, useRef } from "react";
import type { PageState } from "./page-state";

export interface TopBarActions {
  readonly onOpenFiles: (files: readonly File[]) => void;
  readonly onOpenSample: () => void;
}

export interface TopBarProps extends TopBarActions {
  readonly state: PageState;
}

export function TopBar(props: TopBarProps) {
  const { state } = props;
  const busy = state.at === "loading";
  return (
    <header className="bar">
      <h1 className="bar-name">
        <Mark />
        Windowline
      </h1>
      <p className="bar-book">{nameLine(state)}</p>
      <div className="bar-actions">
        <OpenButton disabled={busy} onOpenFiles={props.onOpenFiles} />
        <button type="button" disabled={busy} onClick={props.onOpenSample}>
          Open the sample
        </button>
      </div>
    </header>
  );
}

function OpenButton({ disabled, onOpenFiles }: { disabled: boolean } & Pick<TopBarActions, "onOpenFiles">) {
  const input = useRef<HTMLInputElement>(null);
  const take = (event: ChangeEvent<HTMLInputElement>) => {
    const files = [...(event.currentTarget.files ?? [])];
    event.currentTarget.value = "";
    if (files.length > 0) onOpenFiles(files);
  };
  return (
    <>
      <button type="button" disabled={disabled} onClick={() => input.current?.click()}>
        Open a workbook…
      </button>
      <input ref={input} type="file" multiple hidden accept=".xlsx" data-testid="open-file" onChange={take} />
    </>
  );
}

function nameLine(state: PageState): string {
  if (state.at === "loading") return state.step;
  if (state.at === "failed") return "No workbook is open";
  return state.isSample ? `${state.name}, invented children` : state.name;
}

/** A line that crosses an open bracket. */
function Mark() {
  return (
    <svg className="mark" viewBox="0 0 24 24" width="22" height="22" aria-hidden="true" focusable="false">
      <path d="M9 3H4v18h5M15 3h5v18h-5" fill="none" stroke="currentColor" strokeWidth="2" />
      <path d="M1 15 23 8" fill="none" stroke="currentColor" strokeWidth="2" />
    </svg>
  );
}
