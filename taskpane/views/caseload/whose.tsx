import { Button } from "@fluentui/react-components";
import { useStyles } from "../../look/styles";
import { CHOOSE_THERAPIST, noChoiceInWords, therapistLabel, VISITS_HINT, visitsMessage } from "../../words/caseload";
import { usePane } from "../pane-context";
import { AsOf } from "../parts/as-of";
import { ChoiceField, TextField } from "../parts/fields";
import { Section } from "../parts/section";
import { useFollow } from "../parts/use-follow";

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
  const { found, job } = state;
  const isRead = found !== null && found.failure === null;
  const { place, ask } = useFollow(isRead);
  const read = () => {
    ask();
    actions.read();
  };
  return (
    <div ref={place} tabIndex={-1} className={styles.unringed}>
      {isRead ? (
        <Choice therapists={found.therapists} />
      ) : (
        <Button size="small" disabledFocusable={job !== null} onClick={read}>
          Read the workbook to see its therapists
        </Button>
      )}
    </div>
  );
}

function Choice({ therapists }: { therapists: readonly string[] | null }) {
  const { state, actions } = usePane();
  const styles = useStyles();
  const { therapist, seen } = state.caseload;
  const noChoice = noChoiceInWords(therapists);
  if (noChoice !== null || therapists === null) return <p className={styles.sentence}>{noChoice}</p>;
  const chosen = therapist === null ? -1 : therapists.indexOf(therapist);
  return (
    <ChoiceField
      label="Therapist"
      value={String(chosen)}
      message={seen && chosen < 0 ? CHOOSE_THERAPIST : undefined}
      choices={[
        { value: "-1", label: "Choose a therapist" },
        ...therapists.map((code, index) => ({ value: String(index), label: therapistLabel(code) })),
      ]}
      onChange={(value) => actions.chooseTherapist(therapists[Number(value)] ?? null)}
    />
  );
}
