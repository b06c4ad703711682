import { Button } from "@fluentui/react-components";
import { useStyles } from "../../look/styles";
import { AS_OF, FROM } from "../../words/settings";
import { usePane } from "../pane-context";
import { Section } from "../parts/section";
import { SettingField } from "./setting-field";

export function Period() {
  const { state, actions } = usePane();
  const styles = useStyles();
  const { found, quarter } = state;
  const suggested = found?.quarterEnd;
  return (
    <Section title="Period">
      <div className={styles.fields}>
        <SettingField words={AS_OF} />
        {suggested && quarter.entries.asOf !== suggested && (
          <div>
            <p className={styles.quiet}>The last look in the records is of {found.lastLook}.</p>
            <Button size="small" onClick={() => actions.enter("asOf", suggested)}>
              Use {suggested}, the end of that quarter
            </Button>
          </div>
        )}
        <SettingField words={FROM} />
      </div>
    </Section>
  );
}
