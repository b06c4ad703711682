import { Checkbox } from "@fluentui/react-components";
import { useStyles } from "../../look/styles";
import { usePane } from "../pane-context";
import { Section } from "../parts/section";

/** What applications and boards ask; each question brings its table. */
export function Questions() {
  const { state, actions } = usePane();
  const styles = useStyles();
  const { questions } = state.release;
  return (
    <Section title="What is asked" about="Choose one or more questions, or tables below. One release answers them all.">
      <fieldset className={styles.checks}>
        <legend className={styles.hidden}>Questions of the release</legend>
        {state.choices.questions.map((question) => (
          <Checkbox
            key={question.id}
            label={question.asks}
            checked={questions.some(({ id }) => id === question.id)}
            onChange={(_, { checked }) => actions.askRelease(question, checked === true)}
          />
        ))}
      </fieldset>
    </Section>
  );
}
