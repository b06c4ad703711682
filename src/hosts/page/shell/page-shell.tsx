import { type DragEvent, type RefObject, useEffect, useRef, useState } from "react";
import { EmptyHint, GridCover } from "./grid-cover";
import type { Notice, PageState, Question } from "./page-state";
import { TopBar, type TopBarActions } from "./top-bar";
import { useF6 } from "./use-f6";

export interface PageShellProps extends TopBarActions {
  readonly state: PageState;
  readonly notice: Notice | null;
  readonly question: Question | null;
  /** Why the selected cell shows an error. */
  readonly cellMessage: string | null;
  readonly gridRef: RefObject<HTMLDivElement | null>;
  readonly paneRef: RefObject<HTMLDivElement | null>;
}

/** The page around grid and pane: both are filled in by others. */
export function PageShell(props: PageShellProps) {
  const { dropping, handlers } = useDrop(props.onOpenFiles);
  const page = useRef<HTMLDivElement>(null);
  useF6(page);
  return (
    <div className="page" ref={page} {...handlers}>
      <a className="skip" href="#pane">
        Skip to the pane (F6 moves on: spreadsheet, pane, bar)
      </a>
      <TopBar {...props} />
      <main className="work">
        <aside className="pane" id="pane" tabIndex={-1} aria-label="Windowline pane" ref={props.paneRef} />
        <section className="book" aria-label="Workbook">
          <EmptyHint state={props.state} />
          <div className="grid" ref={props.gridRef} />
          <GridCover state={props.state} dropping={dropping} onOpenSample={props.onOpenSample} />
          <CellMessage message={props.cellMessage} />
        </section>
      </main>
      <NoticeLine notice={props.notice} />
      {props.question && <Asked question={props.question} />}
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

/** The browser's own dialog: it holds the keyboard, and Escape stays. */
function Asked({ question }: { readonly question: Question }) {
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => dialog.current?.showModal(), []);
  return (
    <dialog ref={dialog} className="asked" aria-label="Not saved yet" onCancel={question.stay}>
      <p>{question.text}</p>
      <div className="bar-actions">
        <button type="button" autoFocus onClick={question.stay}>
          Stay here
        </button>
        <button type="button" onClick={question.goOn}>
          Open without saving
        </button>
      </div>
    </dialog>
  );
}

function useDrop(onOpenFiles: (files: readonly File[]) => void) {
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
    const files = [...event.dataTransfer.files];
    if (files.length === 0) return;
    event.preventDefault();
    onOpenFiles(files);
  };
  return { dropping, handlers: { onDragOver: over, onDragLeave: leave, onDrop: drop } };
}
