import { useEffect, useRef } from "react";
import { useStyles } from "../../look/styles";
import { refusedInWords, releaseTitle } from "../../words/release";
import type { ReleaseRefusal } from "../../worker/release/released";
import { Section } from "../parts/section";
import { More } from "./answers";
import { Lines } from "./lines";

/** Why nothing may leave: places and repairs, never a count. It takes the keyboard when it is new. */
export function Refused({ refusal }: { refusal: ReleaseRefusal }) {
  const styles = useStyles();
  const start = useRef<HTMLDivElement>(null);
  useEffect(() => start.current?.focus(), [refusal]);
  const { places, proposals } = refusal;
  const own = [...new Set(places.map(({ repair }) => repair))];
  // One repair for all places is said once.
  const isOne = own.length <= 1;
  const repairs = [...new Set([...proposals, ...(isOne ? own : [])])];
  return (
    <div
      ref={start}
      tabIndex={-1}
      role="group"
      aria-label={releaseTitle({ made: null, refusal })}
      className={styles.unringed}
    >
      <Section title="What would be given away" about={refusedInWords(refusal)}>
        <Lines lines={places.map(({ place, repair }) => (isOne ? place : `${place}: ${repair}`))} what="place" />
      </Section>
      {repairs.length > 0 && (
        <Section title="What to do">
          <Lines lines={repairs} what="repair" />
          <p className={styles.quiet}>Then prepare the release again. Nothing was written.</p>
          <More />
        </Section>
      )}
    </div>
  );
}
