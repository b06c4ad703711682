import { Button } from "@fluentui/react-components";
import { useState } from "react";
import type { Priority } from "../../../src/tables/caseload/concerns";
import { PRIORITY_WORDS } from "../../../src/tables/caseload/priority";
import { useStyles } from "../../look/styles";
import { cutInWords, moreChildren } from "../../words/caseload";
import type { CaseloadListed, ChildLine } from "../../worker/caseload/listed";
import { AddPage } from "./add-page";

/** Children put on the page at a time: each is some ten elements. */
const A_PART = 40;
const PRIORITIES: readonly Priority[] = [1, 2, 3, 4, 5];

export function Children({ listed }: { listed: CaseloadListed }) {
  const styles = useStyles();
  const [shown, setShown] = useState(A_PART);
  const lines = listed.lines.slice(0, shown);
  const hidden = listed.lines.length - lines.length;
  return (
    <>
      {PRIORITIES.map((priority) => (
        <Group key={priority} priority={priority} lines={lines.filter((line) => line.priority === priority)} />
      ))}
      {hidden > 0 && (
        <div className={styles.actions}>
          <Button size="small" appearance="subtle" onClick={() => setShown(shown + A_PART)}>
            {moreChildren(hidden)}
          </Button>
        </div>
      )}
      {hidden === 0 && listed.lines.length < listed.children && <p className={styles.quiet}>{cutInWords(listed)}</p>}
    </>
  );
}

function Group({ priority, lines }: { priority: Priority; lines: readonly ChildLine[] }) {
  const styles = useStyles();
  if (lines.length === 0) return null;
  return (
    <>
      <h3 className={styles.smallTitle}>{PRIORITY_WORDS[priority]}</h3>
      <ul className={styles.list}>
        {lines.map((line) => (
          <OneChild key={line.child} line={line} />
        ))}
      </ul>
    </>
  );
}

function OneChild({ line }: { line: ChildLine }) {
  const styles = useStyles();
  const { child, age, reasons, nextStep } = line;
  return (
    <li className={styles.entry}>
      <h4 className={styles.entryTitle}>
        {child} <span className={styles.caption}>{age}</span>
      </h4>
      {reasons.map((reason) => (
        <p key={reason} className={styles.sentence}>
          {reason}
        </p>
      ))}
      <p className={styles.next}>
        <strong>Next: </strong>
        {nextStep}
      </p>
      <AddPage subject={{ kind: "child", id: child }}>
        Add the page for the next visit<span className={styles.hidden}> of {child}</span>
      </AddPage>
    </li>
  );
}
