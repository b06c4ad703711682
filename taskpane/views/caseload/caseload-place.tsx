import { useEffect, useRef } from "react";
import { useStyles } from "../../look/styles";
import { CASELOAD_ABOUT, caseloadTitle, INTERNAL_LIST, nobodyInWords, OLD_LIST } from "../../words/caseload";
import type { CaseloadListed } from "../../worker/caseload/listed";
import { Disclosure } from "../parts/disclosure";
import { Section } from "../parts/section";
import { AddPage } from "./add-page";
import { Children } from "./children";
import { Plan } from "./plan";
import { Button } from "@fluentui/react-components";
import { visitsAsked } from "../../../src/tables/caseload/plan-visits";
import type { CaseloadState } from "../../state/pane-state";
import { usePane } from "../pane-context";
import { Added } from "../parts/added";
import { useFirstFault } from "../parts/use-first-fault";
import { Whose } from "./whose";

/** One therapist's children in order of urgency, with reason and next step, and the pages to print. */
export function CaseloadPlace() {
  const { state, actions } = usePane();
  const styles = useStyles();
  const { listed, isOld, refused } = state.caseload;
  const again = listed !== null && !isOld && isOf(listed, state.caseload);
  const place = useFirstFault(refused);
  return (
    <div ref={place}>
      <h1 className={styles.title}>{caseloadTitle(listed)}</h1>
      <p className={styles.lead}>{CASELOAD_ABOUT}</p>
      {isOld && <p className={styles.lead}>{OLD_LIST}</p>}
      <Whose />
      <div className={styles.actions}>
        <Button
          appearance={again ? "secondary" : "primary"}
          disabledFocusable={state.job !== null}
          onClick={actions.listChildren}
        >
          {again ? "List the children again" : "List the children"}
        </Button>
      </div>
      {listed && <Listed listed={listed} />}
      <Added />
    </div>
  );
}

/** Whether the list is what the fields ask for. */
function isOf({ therapist }: CaseloadListed, { therapist: chosen, visits, asked }: CaseloadState): boolean {
  return (chosen === null || chosen === therapist) && visitsAsked(visits) === asked?.visits;
}

/** The list itself; it takes the keyboard when it is new. */
function Listed({ listed }: { listed: CaseloadListed }) {
  const styles = useStyles();
  const start = useRef<HTMLDivElement>(null);
  useEffect(() => start.current?.focus(), [listed]);
  return (
    <div
      ref={start}
      tabIndex={-1}
      role="group"
      aria-label={listed.title ?? nobodyInWords(listed)}
      className={styles.unringed}
    >
      {listed.children === 0 ? (
        <Section title="Children">
          <p className={styles.sentence}>{nobodyInWords(listed)}</p>
        </Section>
      ) : (
        <Somebody listed={listed} />
      )}
    </div>
  );
}

function Somebody({ listed }: { listed: CaseloadListed }) {
  const styles = useStyles();
  return (
    <>
      <Section title={`Children as of ${listed.label}`} about={INTERNAL_LIST}>
        <AddPage subject={{ kind: "therapist", code: listed.therapist }}>Add one page for this therapist</AddPage>
        <Children listed={listed} />
        <Disclosure summary="How the order is made">
          {listed.notes.map((note) => (
            <p key={note} className={styles.sentence}>
              {note}
            </p>
          ))}
        </Disclosure>
      </Section>
      <Plan visits={listed.visits} notes={listed.planNotes} />
    </>
  );
}
