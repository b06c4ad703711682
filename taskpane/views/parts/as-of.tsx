import { Button } from "@fluentui/react-components";
import { useRef } from "react";
import { dayFromIso } from "../../../src/age/day";
import { dayInWords } from "../../../src/words/dates";
import { useStyles } from "../../look/styles";
import { AS_OF } from "../../words/settings";
import { usePane } from "../pane-context";
import { SettingField } from "./setting-field";

/** The one as-of date of the pane, and the day that the records suggest. */
export function AsOf() {
  const { state, actions } = usePane();
  const styles = useStyles();
  const field = useRef<HTMLDivElement>(null);
  const { found, quarter } = state;
  const suggested = found?.quarterEnd;
  // The button goes once it is pressed: the keyboard goes on to what it filled in.
  const take = (day: string) => {
    actions.enter("asOf", day);
    field.current?.querySelector("input")?.focus();
  };
  return (
    <>
      <div ref={field}>
        <SettingField words={AS_OF} />
      </div>
      {suggested && quarter.entries.asOf !== suggested && (
        <div>
          <p className={styles.quiet}>The last check in the records is of {inWords(found.lastLook)}.</p>
          <Button size="small" onClick={() => take(suggested)}>
            Use {inWords(suggested)}, the end of that quarter
          </Button>
        </div>
      )}
    </>
  );
}

function inWords(iso: string | null): string {
  const day = iso === null ? null : dayFromIso(iso);
  return day === null ? "" : dayInWords(day);
}
