import { type DragEvent, type RefObject, useEffect, useState } from "react";
import { EmptyHint, GridCover } from "./grid-cover";
import type { Notice, PageState } from "./page-state";
import { TopBar, type TopBarActions } from "./top-bar";

export interface PageShellProps extends TopBarActions {
  readonly state: PageState;
  readonly notice: Notice | null;
  /** Why the selected cell shows an error. */
  readonly cellMessage: string | null;
  readonly gridRef: RefObject<HTMLDivElement | null>;
  readonly paneRef: RefObject<HTMLDivElement | null>;
}

/** The page around grid and pane: both are filled in by others. */
export function PageShell(props: PageShellProps) {
  const { dropping, handlers } = useDrop(props.onOpenFile);
  useF6(props.paneRef, props.gridRef);
  return (
    <div className="page" {...handlers}>
      <a className="skip" href="#pane">
        Skip to the pane (F6 moves between spreadsheet and pane)
      </a>
      <TopBar {...props} />
      <main className="work">
        <section className="book" aria-label="Workbook">
          <EmptyHint state={props.state} />
          <div className="grid" ref={props.gridRef} />
          <GridCover state={props.state} dropping={dropping} onOpenSample={props.onOpenSample} />
          <CellMessage message={props.cellMessage} />
        </section>
        <aside className="pane" id="pane" tabIndex={-1} aria-label="Windowline pane" ref={props.paneRef} />
      </main>
      <NoticeLine notice={props.notice} />
    </div>
  );
}

function CellMessage({ message }: { readonly message: string | null }) {
  return (
    <p className="cell-message" role="status" hidden={message === null}>
      {message}
    </p>
  );
}

function NoticeLine({ notice }: { readonly notice: Notice | null }) {
  return (
    <div className="notice-room" role="status">
      {notice && (
        <p className="notice" data-kind={notice.kind}>
          {notice.kind === "problem" ? `Not done: ${notice.text}` : notice.text}
        </p>
      )}
    </div>
  );
}

/** The spreadsheet keeps the Tab key for its cells: F6 leads out of it and back, as in the programs of an office. */
function useF6(pane: RefObject<HTMLElement | null>, grid: RefObject<HTMLElement | null>): void {
  useEffect(() => {
    const move = (event: KeyboardEvent) => {
      if (event.key !== "F6") return;
      event.preventDefault();
      const inPane = pane.current?.contains(document.activeElement) ?? false;
      if (inPane) grid.current?.querySelector<HTMLElement>(FOCUS_OF_GRID)?.focus();
      else pane.current?.focus();
    };
    window.addEventListener("keydown", move, true);
    return () => window.removeEventListener("keydown", move, true);
  }, [pane, grid]);
}

const FOCUS_OF_GRID = "[contenteditable=true][id$=DOCS_NORMAL]";

function useDrop(onOpenFile: (file: File) => void) {
  const [dropping, setDropping] = useState(false);
  const over = (event: DragEvent) => {
    if (!event.dataTransfer.types.includes("Files")) return;
    event.preventDefault();
    setDropping(true);
  };
  const leave = (event: DragEvent) => {
    if (!event.currentTarget.contains(event.relatedTarget as Node | null)) setDropping(false);
  };
  const drop = (event: DragEvent) => {
    setDropping(false);
    const file = event.dataTransfer.files[0];
    if (!file) return;
    event.preventDefault();
    onOpenFile(file);
  };
  return { dropping, handlers: { onDragOver: over, onDragLeave: leave, onDrop: drop } };
}
