import { Button } from "@fluentui/react-components";
import { useState } from "react";
import { type Decision, isRepair } from "../../../src/records/corrections/decisions";
import { useStyles } from "../../look/styles";
import { CORRECTIONS_ABOUT, decisionInWords, decisionsUnread } from "../../words/decisions";
import { usePane } from "../pane-context";
import { Messages } from "../parts/messages";
import { Disclosure } from "../parts/disclosure";
import { Section } from "../parts/section";
import { CorrectionsFile } from "./corrections-file";
import { NewDecision } from "./new-decision";

/** What was settled one by one, each to be revoked and taken up again, and the file that carries it all. */
export function Corrections() {
  const { state, actions } = usePane();
  const styles = useStyles();
  const { list, messages, unread } = state.decisions;
  const isThere = list.some(isRepair);
  const [faults, setFaults] = useState<readonly string[]>([]);
  const keep = (decisions: readonly Decision[]) => void actions.keepDecisions(decisions).then(setFaults);
  return (
    <Section title="Corrections you made" about={CORRECTIONS_ABOUT}>
      {messages.length > 0 && <Unreadable messages={messages} onAfresh={() => keep([])} />}
      {unread !== null && <p className={styles.told}>{decisionsUnread(unread)}</p>}
      {!isThere && messages.length === 0 && unread === null && (
        <p className={styles.sentence}>You made no correction yet.</p>
      )}
      <ul className={styles.list}>
        {list.map(
          (decision, index) =>
            isRepair(decision) && (
              <CorrectionLine
                key={`${index} ${JSON.stringify(decision)}`}
                decision={decision}
                onChange={(changed) => keep(list.map((each, at) => (at === index ? changed : each)))}
              />
            ),
        )}
      </ul>
      <Messages messages={faults} />
      <Disclosure summary="Make a correction">
        <NewDecision skills={state.found?.skills ?? []} />
      </Disclosure>
      <CorrectionsFile />
    </Section>
  );
}

function CorrectionLine({ decision, onChange }: { decision: Decision; onChange: (changed: Decision) => void }) {
  const { state } = usePane();
  const styles = useStyles();
  const words = decisionInWords(decision);
  const revoked = decision.revoked === true;
  const verb = revoked ? "Take up again" : "Revoke";
  return (
    <li className={styles.entry}>
      <p className={styles.sentence}>
        {revoked && <strong>Revoked: </strong>}
        <span className={revoked ? styles.struck : undefined}>{words}</span>
      </p>
      <Button
        size="small"
        aria-label={`${verb}: ${words}`}
        disabledFocusable={state.job !== null}
        onClick={() => onChange({ ...decision, revoked: !revoked })}
      >
        {verb}
      </Button>
    </li>
  );
}

function Unreadable({ messages, onAfresh }: { messages: readonly string[]; onAfresh: () => void }) {
  const styles = useStyles();
  return (
    <div className={styles.told}>
      <p className={styles.sentence}>
        The corrections kept with this workbook cannot be read, so none is in force. Nothing is kept over them until you
        say so.
      </p>
      {messages.map((message) => (
        <p key={message} className={styles.sentence}>
          {message}
        </p>
      ))}
      <Button size="small" onClick={onAfresh}>
        Start again without corrections
      </Button>
    </div>
  );
}
