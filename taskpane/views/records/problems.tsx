import type { Severity } from "../../../src/records/findings/finding";
import { useStyles } from "../../look/styles";
import { SEVERITY_HEADINGS } from "../../words/records";
import type { RecordsFound } from "../../worker/records/found";
import { Disclosure } from "../parts/disclosure";
import { Section } from "../parts/section";
import { FindingGroupView } from "./finding-group";

const ORDER: readonly Severity[] = ["error", "warning", "note"];

export function Problems({ found }: { found: RecordsFound }) {
  const styles = useStyles();
  return (
    <Section title="Problems found" about={ABOUT}>
      {found.groups.length === 0 && <p className={styles.sentence}>No problems were found.</p>}
      {ORDER.map((severity) => (
        <OfSeverity key={severity} severity={severity} found={found} />
      ))}
    </Section>
  );
}

const ABOUT = "By kind. The text of a cell is never repeated here; show the cell to see it.";

function OfSeverity({ severity, found }: { severity: Severity; found: RecordsFound }) {
  const styles = useStyles();
  const groups = found.groups
    .map((group, index) => ({ group, index }))
    .filter(({ group }) => group.severity === severity);
  if (groups.length === 0) return null;
  const { title, about } = SEVERITY_HEADINGS[severity];
  const list = groups.map(({ group, index }) => (
    <FindingGroupView key={`${group.rule} ${group.table}`} group={group} index={index} skills={found.skills} />
  ));
  if (severity === "note") {
    return (
      <Disclosure summary={`${title}: ${groups.length}`}>
        <p className={styles.quiet}>{about}</p>
        {list}
      </Disclosure>
    );
  }
  return (
    <>
      <h3 className={styles.smallTitle}>{title}</h3>
      <p className={styles.quiet}>{about}</p>
      {list}
    </>
  );
}
