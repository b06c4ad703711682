import { Button } from "@fluentui/react-components";
import { DECISION } from "../../../src/release/words/rule-words";
import { useStyles } from "../../look/styles";
import { OLD_RELEASE, RELEASE_ABOUT, releaseTitle } from "../../words/release";
import { usePane } from "../pane-context";
import { useFirstFault } from "../parts/use-first-fault";
import { GroupBy } from "../quarter/group-by";
import { Period } from "../quarter/period";
import { Bands } from "./bands";
import { Ledger } from "./ledger";
import { Prepared } from "./prepared";
import { Questions } from "./questions";
import { Refused } from "./refused";
import { ReleasedTables } from "./released-tables";
import { Rule } from "./rule";

/** Figures that can leave the program: what is asked, what an outsider could prove, and the files. */
export function ReleasePlace() {
  const { state, actions } = usePane();
  const styles = useStyles();
  const { made, refusal, isOld, refused } = state.release;
  const place = useFirstFault(refused);
  return (
    <div ref={place}>
      <h1 className={styles.title}>{releaseTitle(state.release)}</h1>
      <p className={styles.lead}>{RELEASE_ABOUT}</p>
      <p className={styles.boxed}>{DECISION}</p>
      {isOld && <p className={styles.lead}>{OLD_RELEASE}</p>}
      {made && <Prepared made={made} />}
      {refusal && <Refused refusal={refusal} />}
      <Questions />
      <ReleasedTables />
      <Rule />
      <Period />
      <GroupBy />
      <Bands />
      <Ledger />
      <div className={styles.lastActions}>
        <Button
          appearance={made && !isOld ? "secondary" : "primary"}
          disabledFocusable={state.job !== null}
          onClick={actions.prepareRelease}
        >
          {made && !isOld ? "Prepare the release again" : "Prepare the release"}
        </Button>
        <span className={styles.caption}>Nothing is written until you save it.</span>
      </div>
    </div>
  );
}
