import { Button } from "@fluentui/react-components";
import { useStyles } from "../../look/styles";
import { sharesInWords, TRY_ABOUT } from "../../words/release";
import type { ReleaseMade } from "../../worker/release/released";
import { usePane } from "../pane-context";
import { Section } from "../parts/section";
import { Lines } from "./lines";

/** The questions with their figures, what is held back of them, and what would show it. */
export function Answers({ made: { answers, shares } }: { made: ReleaseMade }) {
  const styles = useStyles();
  return (
    <Section title={answers.length === 0 ? "What shows" : "The answers"} about={sharesInWords(shares)}>
      {answers.map(({ asks, lines }) => (
        <div key={asks}>
          <h3 className={styles.smallTitle}>{asks}</h3>
          <Lines lines={lines} what="sentence" />
        </div>
      ))}
      {shares.shown < shares.wanted && <More />}
    </Section>
  );
}

/** What would show more: tried when the user asks for it, each way with a button that asks that way. */
export function More() {
  const { state, actions } = usePane();
  const styles = useStyles();
  const { tried, isOld } = state.release;
  const still = state.job !== null || isOld;
  if (tried === null) {
    return (
      <div className={styles.boxed}>
        <p className={styles.sentence}>{TRY_ABOUT}</p>
        <Button size="small" disabledFocusable={still} onClick={actions.tryMore}>
          Try what would show more
        </Button>
      </div>
    );
  }
  return (
    <div className={styles.boxed}>
      <h3 className={styles.smallTitle}>What was tried</h3>
      <ul className={styles.plainList}>
        {tried.map((way) => (
          <li key={way.text}>
            <p className={styles.sentence}>{way.text}</p>
            {way.showsMore && (
              <Button size="small" disabledFocusable={still} onClick={() => actions.prepareThatWay(way)}>
                Prepare it this way<span className={styles.hidden}>: {way.text}</span>
              </Button>
            )}
          </li>
        ))}
      </ul>
    </div>
  );
}
