import { FluentProvider, mergeClasses, Tab, TabList } from "@fluentui/react-components";
import { useSyncExternalStore } from "react";
import { useStyles } from "../look/styles";
import { darkTheme, lightTheme } from "../look/theme";
import type { Pane } from "../jobs/pane";
import type { PaneActions } from "./actions";
import { PaneContext, usePane } from "./pane-context";
import { ChartPatterns } from "./parts/chart-patterns";
import { JobLine } from "./parts/job-line";
import { Mark } from "./parts/mark";
import { ToldLine } from "./parts/told-line";
import { PLACES } from "./places";
import { useDark } from "./use-dark";

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
  const { state } = usePane();
  const styles = useStyles();
  return (
    <main className={styles.page}>
      <div className={styles.head}>
        <Mark />
        <span>Windowline</span>
        <span className={styles.headName}>{state.bookName}</span>
      </div>
      <Places />
      <ToldLine />
      <JobLine />
      {PLACES.map(({ id, View }) => (
        <div key={id} role="tabpanel" id={`place-${id}`} aria-labelledby={`tab-${id}`} hidden={id !== state.place}>
          {id === state.place && <View />}
        </div>
      ))}
    </main>
  );
}

function Places() {
  const { state, actions } = usePane();
  const styles = useStyles();
  return (
    <TabList
      className={styles.tabs}
      aria-label="Places"
      selectedValue={state.place}
      onTabSelect={(_, { value }) => actions.openPlace(String(value))}
    >
      {PLACES.map(({ id, label }) => (
        <Tab key={id} value={id} id={`tab-${id}`} aria-controls={`place-${id}`}>
          {label}
        </Tab>
      ))}
    </TabList>
  );
}
