import { mergeClasses } from "@fluentui/react-components";
import { HEADS, type TextFinding } from "../../../src/release/text-check/check-text";
import { useStyles } from "../../look/styles";

/** The text as written, each finding marked where it is: by a line of its own kind, its number in the list, and its word. */
export function MarkedText({ text, findings }: { text: string; findings: readonly TextFinding[] }) {
  const styles = useStyles();
  return (
    <div className={styles.passage} role="group" aria-label="The text with what was found in it" tabIndex={0}>
      {stretchesOf(text, findings).map(({ start, written, index, kind }) =>
        kind === null ? (
          <span key={start}>{written}</span>
        ) : (
          <mark key={start} className={mergeClasses(styles.marked, styles[kind])}>
            {written}
            <span className={styles.markWord}>
              {index + 1} {HEADS[kind]}
            </span>
          </mark>
        ),
      )}
    </div>
  );
}

export interface TextStretch {
  readonly start: number;
  readonly written: string;
  /** Of the finding; -1 and null between findings. */
  readonly index: number;
  readonly kind: TextFinding["kind"] | null;
}

/**
 * A text cut where findings begin and end; put together again it is the text. Findings come with the gravest first: where
 * two overlap, it keeps its whole stretch and the other what is left before or after it.
 */
export function stretchesOf(text: string, findings: readonly TextFinding[]): TextStretch[] {
  const owner = new Int32Array(text.length).fill(-1);
  findings.forEach(({ start, end }, index) => {
    for (let at = start; at < end; at += 1) if (owner[at] === -1) owner[at] = index;
  });
  const stretches: TextStretch[] = [];
  for (let start = 0; start < text.length;) {
    const index = owner[start] as number;
    let end = start + 1;
    while (end < text.length && owner[end] === index) end += 1;
    stretches.push({ start, written: text.slice(start, end), index, kind: findings[index]?.kind ?? null });
    start = end;
  }
  return stretches;
}
