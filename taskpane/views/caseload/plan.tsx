import { useStyles } from "../../look/styles";
import { looksInWords, planInWords, visitInShort } from "../../words/caseload";
import type { VisitToMake } from "../../worker/caseload/listed";
import { Disclosure } from "../parts/disclosure";
import { Section } from "../parts/section";

/** The re-check plan: which child to see next, and what to look at. */
export function Plan({ visits, notes }: { visits: readonly VisitToMake[]; notes: readonly string[] }) {
  const styles = useStyles();
  return (
    <Section title="What to check next" about={planInWords(visits)}>
      <ol className={styles.list}>
        {visits.map((visit, index) => (
          <OneVisit key={index} visit={visit} order={index + 1} />
        ))}
      </ol>
      <Disclosure summary="How the plan is made">
        {notes.map((note) => (
          <p key={note} className={styles.sentence}>
            {note}
          </p>
        ))}
      </Disclosure>
    </Section>
  );
}

function OneVisit({ visit, order }: { visit: VisitToMake; order: number }) {
  const styles = useStyles();
  return (
    <li>
      <Disclosure
        summary={
          <>
            Visit {order}: <strong>{visit.child}</strong>
            <span className={styles.under}>{visitInShort(visit)}</span>
          </>
        }
      >
        {visit.looks.map((look) => (
          <p key={look.why} className={styles.sentence}>
            {looksInWords(look)}
          </p>
        ))}
      </Disclosure>
    </li>
  );
}
