import { useEffect, useRef, useState, useSyncExternalStore } from "react";
import type { PageServices } from "./page-services";
import { PageSession, STARTING } from "./page-session";
import { PageShell } from "./page-shell";

/** The whole page. The spreadsheet is fetched once the page stands, so that there is something to see at once. */
export function PageApp({ services }: { readonly services: PageServices }) {
  const gridRef = useRef<HTMLDivElement>(null);
  const paneRef = useRef<HTMLDivElement>(null);
  const [session, setSession] = useState<PageSession | null>(null);
  useEffect(() => {
    void startSession(gridRef.current, paneRef.current, services).then(setSession);
  }, [services]);
  const view = useSyncExternalStore(session?.view.subscribe ?? never, session?.view.get ?? (() => STARTING));
  return (
    <PageShell
      {...view}
      gridRef={gridRef}
      paneRef={paneRef}
      onOpenFiles={(files) => session?.openFiles(files)}
      onOpenSample={() => session?.openSample()}
    />
  );
}

async function startSession(
  grid: HTMLElement | null,
  pane: HTMLElement | null,
  services: PageServices,
): Promise<PageSession> {
  if (!grid || !pane) throw new RangeError("PageApp: the page has no room for grid and pane");
  const { gridRoom } = await import("../grid/grid-room");
  const session = new PageSession(gridRoom(grid), pane, services);
  session.openSample();
  return session;
}

function never(): () => void {
  return () => undefined;
}
