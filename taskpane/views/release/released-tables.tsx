import { Checkbox } from "@fluentui/react-components";
import { notCoveredWithin } from "../../../src/release/ties/not-covered";
import { useStyles } from "../../look/styles";
import { NO_TABLES_TO_RELEASE } from "../../words/release";
import { usePane } from "../pane-context";
import { Messages } from "../parts/messages";
import { Section } from "../parts/section";

/** Only tables of counts that may leave; those about single children are not offered. */
export function ReleasedTables() {
  const { state, actions } = usePane();
  const styles = useStyles();
  const { tables, refused } = state.release;
  return (
    <Section
      title="Tables that may be released"
      about="Ages in them are whole months, and no date is finer than the quarter."
    >
      <fieldset className={styles.checks}>
        <legend className={styles.hidden}>Tables of the release</legend>
        {state.choices.tables
          .filter((each) => each.releasable)
          .map(({ id, name, about }) => (
            <Checkbox
              key={id}
              label={
                <>
                  {name}
                  <span className={styles.caption}> – {about}</span>
                </>
              }
              checked={tables.includes(id)}
              onChange={(_, { checked }) => actions.chooseReleaseTable(id, checked === true)}
            />
          ))}
      </fieldset>
      {notCoveredWithin(tables).map((sentence) => (
        <p key={sentence} className={styles.sentence}>
          {sentence}
        </p>
      ))}
      {refused > 0 && tables.length === 0 && <Messages messages={[NO_TABLES_TO_RELEASE]} />}
    </Section>
  );
}
