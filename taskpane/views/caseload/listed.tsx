import { useEffect, useRef } from "react";
import { useStyles } from "../../look/styles";
import { INTERNAL_LIST, nobodyInWords } from "../../words/caseload";
import type { CaseloadListed } from "../../worker/caseload/listed";
import { Disclosure } from "../parts/disclosure";
import { Section } from "../parts/section";
import { AddPage } from "./add-page";
import { Children } from "./children";
import { Plan } from "./plan";

/** The list itself; it takes the keyboard when it is new. */
export function Listed({ listed }: { listed: CaseloadListed }) {
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
