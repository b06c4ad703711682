import { Button } from "@fluentui/react-components";
import { useStyles } from "../../look/styles";
import { CHOOSE_THERAPIST, noChoiceInWords, therapistLabel, VISITS_HINT, visitsMessage } from "../../words/caseload";
import { usePane } from "../pane-context";
import { AsOf } from "../parts/as-of";
import { ChoiceField, TextField } from "../parts/fields";
import { Section } from "../parts/section";

/** The day, the therapist, and for how many visits to plan. */
export function Whose() {
  const { state, actions } = usePane();
  const styles = useStyles();
  const { visits, seen } = state.caseload;
  return (
    <Section title="Day and therapist">
      <div className={styles.fields}>
        <AsOf />
        <Therapist />
        <TextField
          label="Visits to plan for"
          hint={VISITS_HINT}
          value={visits}
          message={seen ? visitsMessage(visits) : undefined}
          onChange={actions.enterVisits}
        />
      </div>
    </Section>
  );
}

function Therapist() {
  const { state, actions } = usePane();
  const styles = useStyles();
  const { found, caseload, job } = state;
  if (!found || found.failure !== null) {
    return (
      <div>
        <Button size="small" disabledFocusable={job !== null} onClick={actions.read}>
          Read the workbook to see its therapists
        </Button>
      </div>
    );
  }
  const { therapists } = found;
  const noChoice = noChoiceInWords(therapists);
  if (noChoice !== null || therapists === null) return <p className={styles.sentence}>{noChoice}</p>;
  const chosen = caseload.therapist === null ? -1 : therapists.indexOf(caseload.therapist);
  return (
    <ChoiceField
      label="Therapist"
      value={String(chosen)}
      message={caseload.seen && chosen < 0 ? CHOOSE_THERAPIST : undefined}
      choices={[
        { value: "-1", label: "Choose a therapist" },
        ...therapists.map((code, index) => ({ value: String(index), label: therapistLabel(code) })),
      ]}
      onChange={(value) => actions.chooseTherapist(therapists[Number(value)] ?? null)}
    />
  );
}
