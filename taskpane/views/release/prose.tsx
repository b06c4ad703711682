import { Button, Field, Textarea } from "@fluentui/react-components";
import { useStyles } from "../../look/styles";
import { capitalised, proseHead } from "../../words/release";
import { usePane } from "../pane-context";
import { Section } from "../parts/section";

const ABOUT =
  "Paste a passage: each number is held against the release, each percent against its two numbers, and the period is looked for. It stays in this pane.";

/** A text that is to go with the figures, checked; words that claim a cause are advice only. */
export function Prose() {
  const { state, actions } = usePane();
  const styles = useStyles();
  const { prose, checked, isOld } = state.release;
  return (
    <Section title="A text that goes with it" about={ABOUT}>
      <Field label="Text to check">
        <Textarea
          rows={4}
          resize="vertical"
          value={prose}
          spellCheck={false}
          onChange={(_, { value }) => actions.writeProse(value)}
        />
      </Field>
      <div className={styles.actions}>
        <Button
          size="small"
          disabledFocusable={state.job !== null || isOld || prose.trim() === ""}
          onClick={actions.checkProse}
        >
          Check the text
        </Button>
      </div>
      {checked && checked.findings.length > 0 && (
        <ul className={styles.list} aria-label="What was found in the text">
          {checked.findings.map((finding, index) => (
            <li key={index} className={styles.entry}>
              <h3 className={styles.entryTitle}>{proseHead(finding)}</h3>
              <p className={styles.sentence}>{capitalised(finding.message)}</p>
            </li>
          ))}
        </ul>
      )}
    </Section>
  );
}
