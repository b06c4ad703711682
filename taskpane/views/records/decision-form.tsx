import { Button } from "@fluentui/react-components";
import { type FormEvent, useState } from "react";
import type { Decision } from "../../../src/records/corrections/decisions";
import { useStyles } from "../../look/styles";
import type { RecordsFound } from "../../worker/records/found";
import { usePane } from "../pane-context";
import { Messages } from "../parts/messages";
import { DecisionFields } from "./decision-fields";

/** One decision to be filled in; what the draft already says is not asked again where `about` says it. */
export function DecisionForm(props: {
  draft: Decision;
  skills: RecordsFound["skills"];
  about?: string;
  onKept?: () => void;
}) {
  const { state, actions } = usePane();
  const styles = useStyles();
  const [draft, setDraft] = useState(props.draft);
  const [messages, setMessages] = useState<readonly string[]>([]);
  const keep = async (event: FormEvent) => {
    event.preventDefault();
    const list = [...state.decisions.list, draft];
    const faults = isFilled(draft) ? await actions.keepDecisions(list) : ["Fill in every field of the correction."];
    setMessages(faults);
    if (faults.length === 0) props.onKept?.();
  };
  return (
    <form
      className={styles.fields}
      onSubmit={(event) => void keep(event)}
      aria-label={props.about ?? "A new correction"}
    >
      <DecisionFields draft={draft} onChange={setDraft} skills={props.skills} fixed={props.about} />
      <Messages messages={messages} />
      <div>
        <Button type="submit" disabledFocusable={state.job !== null || state.decisions.messages.length > 0}>
          Keep this correction
        </Button>
      </div>
    </form>
  );
}

function isFilled(draft: Decision): boolean {
  return Object.values(draft).every((value) => typeof value !== "string" || value.trim() !== "");
}
