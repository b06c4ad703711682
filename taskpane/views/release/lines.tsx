import { Button } from "@fluentui/react-components";
import { useState } from "react";
import { plural } from "../../../src/words/numbers";
import { useStyles } from "../../look/styles";

const A_PART = 10;

/** Sentences as a list, the first of many at first. */
export function Lines({ lines, what }: { lines: readonly string[]; what: string }) {
  const styles = useStyles();
  const [shown, setShown] = useState(A_PART);
  const hidden = lines.length - shown;
  return (
    <>
      <ul className={styles.plainList}>
        {lines.slice(0, shown).map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      {hidden > 0 && (
        <Button size="small" appearance="subtle" onClick={() => setShown(shown + 4 * A_PART)}>
          Show more: {plural(hidden, what, `${what}s`)} not shown yet
        </Button>
      )}
    </>
  );
}
