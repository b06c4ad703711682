import { useEffect, useRef } from "react";
import { ruleInWords } from "../../../src/release/words/rule-words";
import { useStyles } from "../../look/styles";
import {
  attackInWords,
  earlierInWords,
  heldBackInWords,
  lossInWords,
  NOTHING_UNCOVERED,
  releaseTitle,
  SYMBOL_ABOUT,
} from "../../words/release";
import type { ReleaseMade } from "../../worker/release/released";
import { Section } from "../parts/section";
import { Answers } from "./answers";
import { Lines } from "./lines";
import { PreviewTable } from "./preview-table";
import { Prose } from "./prose";
import { SaveRelease } from "./save-release";

/** What was prepared; it takes the keyboard when it is new. */
export function Prepared({ made }: { made: ReleaseMade }) {
  const styles = useStyles();
  const start = useRef<HTMLDivElement>(null);
  useEffect(() => start.current?.focus(), [made]);
  return (
    <div
      ref={start}
      tabIndex={-1}
      role="group"
      aria-label={releaseTitle({ made, refusal: null })}
      className={styles.unringed}
    >
      <Answers made={made} />
      <Protection made={made} />
      <Section title="What leaves" about={`As of ${made.label}; period ${made.period}. ${SYMBOL_ABOUT}`}>
        {made.tables.map((table, index) => (
          <PreviewTable key={table.id} table={table} index={index} />
        ))}
      </Section>
      <Prose />
      <SaveRelease />
    </div>
  );
}

function Protection({ made }: { made: ReleaseMade }) {
  const styles = useStyles();
  const loss = lossInWords(made);
  const { flags, notCovered } = made;
  return (
    <Section title="How it is protected">
      <p className={styles.sentence}>{ruleInWords(made.rule)}</p>
      <h3 className={styles.smallTitle}>What is held back</h3>
      <p className={styles.sentence}>{heldBackInWords(made)}</p>
      {loss && <p className={styles.sentence}>{loss}</p>}
      <h3 className={styles.smallTitle}>What a reader from outside could prove</h3>
      <p className={styles.sentence}>{attackInWords(made)}</p>
      <p className={styles.sentence}>{earlierInWords(made.earlier)}</p>
      {flags.length > 0 && (
        <>
          <h3 className={styles.smallTitle}>All or none of a group</h3>
          <p className={styles.quiet}>
            For you, and in no file: 0% and 100% say something of every child of the group.
          </p>
          <Lines lines={flags} what="place" />
        </>
      )}
      <h3 className={styles.smallTitle}>What is not covered</h3>
      <Lines lines={notCovered.length === 0 ? [NOTHING_UNCOVERED] : notCovered} what="sentence" />
    </Section>
  );
}
