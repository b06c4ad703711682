import type { Severity } from "../../../src/records/findings/finding";
import { useStyles } from "../../look/styles";
import { SEVERITY_HEADINGS } from "../../words/records";
import type { RecordsFound } from "../../worker/records/found";
import { Section } from "../parts/section";
import { FindingGroupView } from "./finding-group";

const ORDER: readonly Severity[] = ["error", "warning", "note"];

export function Findings({ found }: { found: RecordsFound }) {
  const styles = useStyles();
  return (
    <Section title="Findings" about="By rule. The text of a cell is never repeated here; go to the cell to see it.">
      {found.groups.length === 0 && <p className={styles.sentence}>Nothing was found that a person should see to.</p>}
      {ORDER.map((severity) => (
        <OfSeverity key={severity} severity={severity} found={found} />
      ))}
    </Section>
  );
}

function OfSeverity({ severity, found }: { severity: Severity; found: RecordsFound }) {
  const styles = useStyles();
  const groups = found.groups
    .map((group, index) => ({ group, index }))
    .filter(({ group }) => group.severity === severity);
  if (groups.length === 0) return null;
  const { title, about } = SEVERITY_HEADINGS[severity];
  return (
    <>
      <h3 className={styles.smallTitle}>{title}</h3>
      <p className={styles.quiet}>{about}</p>
      {groups.map(({ group, index }) => (
        <FindingGroupView key={`${group.rule} ${group.table}`} group={group} index={index} skills={found.skills} />
      ))}
    </>
  );
}
