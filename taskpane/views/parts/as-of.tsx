import { Button } from "@fluentui/react-components";
import { useStyles } from "../../look/styles";
import { AS_OF } from "../../words/settings";
import { usePane } from "../pane-context";
import { SettingField } from "./setting-field";

/** The one as-of date of the pane, and the day that the records suggest. */
export function AsOf() {
  const { state, actions } = usePane();
  const styles = useStyles();
  const { found, quarter } = state;
  const suggested = found?.quarterEnd;
  return (
    <>
      <SettingField words={AS_OF} />
      {suggested && quarter.entries.asOf !== suggested && (
        <div>
          <p className={styles.quiet}>The last look in the records is of {found.lastLook}.</p>
          <Button size="small" onClick={() => actions.enter("asOf", suggested)}>
            Use {suggested}, the end of that quarter
          </Button>
        </div>
      )}
    </>
  );
}
