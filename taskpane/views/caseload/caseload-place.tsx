import { Button } from "@fluentui/react-components";
import { visitsAsked } from "../../../src/tables/caseload/plan-visits";
import { useStyles } from "../../look/styles";
import type { CaseloadState } from "../../state/pane-state";
import type { CaseloadListed } from "../../worker/caseload/listed";
import { CASELOAD_ABOUT, caseloadTitle, OLD_LIST } from "../../words/caseload";
import { usePane } from "../pane-context";
import { Added } from "../parts/added";
import { useFirstFault } from "../parts/use-first-fault";
import { Listed } from "./listed";
import { Whose } from "./whose";

/** One therapist's children in order of urgency, with reason and next step, and the pages to print. */
export function CaseloadPlace() {
  const { state, actions } = usePane();
  const styles = useStyles();
  const { listed, isOld, refused } = state.caseload;
  const again = listed !== null && !isOld && isOf(listed, state.caseload);
  const place = useFirstFault(refused);
  return (
    <div ref={place}>
      <h1 className={styles.title}>{caseloadTitle(listed)}</h1>
      <p className={styles.lead}>{CASELOAD_ABOUT}</p>
      {isOld && <p className={styles.lead}>{OLD_LIST}</p>}
      <Whose />
      <div className={styles.actions}>
        <Button
          appearance={again ? "secondary" : "primary"}
          disabledFocusable={state.job !== null}
          onClick={actions.listChildren}
        >
          {again ? "List the children again" : "List the children"}
        </Button>
      </div>
      {listed && <Listed listed={listed} />}
      <Added />
    </div>
  );
}

/** Whether the list is what the fields ask for. */
function isOf({ therapist }: CaseloadListed, { therapist: chosen, visits, asked }: CaseloadState): boolean {
  return (chosen === null || chosen === therapist) && visitsAsked(visits) === asked?.visits;
}
