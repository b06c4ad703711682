import { Button, Field, Textarea } from "@fluentui/react-components";
import { useRef } from "react";
import type { TextFinding } from "../../../src/release/text-check/check-text";
import { useStyles } from "../../look/styles";
import { agreesInWords, capitalised, proseHead } from "../../words/release";
import { usePane } from "../pane-context";
import { Disclosure } from "../parts/disclosure";
import { Section } from "../parts/section";
import { MarkedText } from "./marked-text";

const ABOUT =
  "Paste a passage. Each number is compared with the release, each percent with its two counts, and the text must name the period. The text stays in this pane.";

/** A text that is to go with the figures, checked; words that claim a cause are advice only. */
export function Prose() {
  const { state, actions } = usePane();
  const styles = useStyles();
  const field = useRef<HTMLTextAreaElement>(null);
  const { prose, checked, isOld } = state.release;
  const show = ({ start, end }: TextFinding) => {
    field.current?.focus();
    field.current?.setSelectionRange(start, end);
  };
  return (
    <Section title="A text that goes with it" about={ABOUT}>
      <Field label="Text to check">
        <Textarea
          textarea={{ ref: field }}
          rows={4}
          resize="vertical"
          value={prose}
          spellCheck={false}
          onChange={(_, { value }) => actions.writeProse(value)}
        />
      </Field>
      <div className={styles.actions}>
        <Button
          size="small"
          disabledFocusable={state.job !== null || isOld || prose.trim() === ""}
          onClick={actions.checkProse}
        >
          Check the text
        </Button>
      </div>
      {checked && checked.findings.length > 0 && (
        <>
          <MarkedText text={prose} findings={checked.findings} />
          <Found findings={checked.findings} onShow={show} />
        </>
      )}
    </Section>
  );
}

interface FoundProps {
  readonly findings: readonly TextFinding[];
  readonly onShow: (finding: TextFinding) => void;
}

/** What asks for something, each with its number in the text; what agrees opens on demand. */
function Found({ findings, onShow }: FoundProps) {
  const numbered = findings.map((finding, index) => ({ finding, number: index + 1 }));
  const asking = numbered.filter(({ finding }) => finding.kind !== "agrees");
  const agreeing = numbered.filter(({ finding }) => finding.kind === "agrees");
  return (
    <>
      <Entries entries={asking} onShow={onShow} label="What was found in the text" />
      {agreeing.length > 0 && (
        <Disclosure summary={agreesInWords(agreeing.length)}>
          <Entries entries={agreeing} onShow={onShow} label="What agrees with the release" />
        </Disclosure>
      )}
    </>
  );
}

interface EntriesProps {
  readonly entries: readonly { readonly finding: TextFinding; readonly number: number }[];
  readonly onShow: (finding: TextFinding) => void;
  readonly label: string;
}

function Entries({ entries, onShow, label }: EntriesProps) {
  const styles = useStyles();
  if (entries.length === 0) return null;
  return (
    <ul className={styles.list} aria-label={label}>
      {entries.map(({ finding, number }) => (
        <li key={number} className={styles.entry}>
          <h3 className={styles.entryTitle}>
            {number}. {proseHead(finding)}
          </h3>
          <p className={styles.sentence}>{capitalised(finding.message)}</p>
          {finding.written !== "" && (
            <Button size="small" appearance="subtle" onClick={() => onShow(finding)}>
              Show in the text
              <span className={styles.hidden}>: {finding.written}</span>
            </Button>
          )}
        </li>
      ))}
    </ul>
  );
}
