import { type ComponentType, useSyncExternalStore } from "react";
import { CaseloadPlace } from "./caseload/caseload-place";
import { QuarterPlace } from "./quarter/quarter-place";
import { RecordsPlace } from "./records/records-place";
import { ReleasePlace } from "./release/release-place";
import { FluentProvider, mergeClasses } from "@fluentui/react-components";
import { useStyles } from "../look/styles";
import { darkTheme, lightTheme } from "../look/theme";
import type { Pane } from "../jobs/pane";
import type { PaneActions } from "./actions";
import { PaneContext, usePane } from "./pane-context";
import { ChartPatterns } from "./parts/chart-patterns";
import { Foot } from "./parts/foot";
import { Mark } from "./parts/mark";

export function PaneApp({ store, actions, dark }: { store: Pane["store"]; actions: PaneActions; dark?: boolean }) {
  const state = useSyncExternalStore(store.subscribe, store.state);
  const styles = useStyles();
  const preferred = useDark();
  const isDark = dark ?? preferred;
  return (
    <FluentProvider theme={isDark ? darkTheme : lightTheme} className={isDark ? styles.dark : styles.light}>
      <PaneContext value={{ state, actions }}>
        <div className={mergeClasses(styles.pane, isDark ? styles.dark : styles.light)}>
          <ChartPatterns />
          <Page />
        </div>
      </PaneContext>
    </FluentProvider>
  );
}

function Page() {
  const { state, actions } = usePane();
  const styles = useStyles();
  const Place = PLACES.find(({ id }) => id === state.place);
  return (
    <main className={styles.page} onKeyDown={({ key }) => key === "Escape" && actions.cancel()}>
      <div className={styles.head}>
        <Mark />
        <span>Windowline</span>
        <span className={styles.headName}>{state.bookName}</span>
      </div>
      <Places />
      {Place && <Place.View />}
      <Foot />
    </main>
  );
}

function Places() {
  const { state, actions } = usePane();
  const styles = useStyles();
  return (
    <nav aria-label="Places" className={styles.places}>
      {PLACES.map(({ id, label }) => (
        <button
          key={id}
          type="button"
          className={styles.place}
          aria-current={id === state.place ? "page" : undefined}
          onClick={() => actions.openPlace(id)}
        >
          {label}
        </button>
      ))}
    </nav>
  );
}

/** The places of the pane, each one job. Another one is another line here. */
const PLACES: readonly { readonly id: string; readonly label: string; readonly View: ComponentType }[] = [
  { id: "records", label: "Records", View: RecordsPlace },
  { id: "quarter", label: "Quarter", View: QuarterPlace },
  { id: "caseload", label: "Caseload", View: CaseloadPlace },
  { id: "release", label: "Release", View: ReleasePlace },
];

const DARK = "(prefers-color-scheme: dark)";

/** Whether the user asked the system for dark pages. */
function useDark(): boolean {
  return useSyncExternalStore(listen, () => window.matchMedia(DARK).matches);
}

function listen(changed: () => void): () => void {
  const query = window.matchMedia(DARK);
  query.addEventListener("change", changed);
  return () => query.removeEventListener("change", changed);
}
