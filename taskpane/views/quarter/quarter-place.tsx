import { Button } from "@fluentui/react-components";
import { useStyles } from "../../look/styles";
import { quarterTitle } from "../../words/report";
import { usePane } from "../pane-context";
import { Added } from "../parts/added";
import { useFirstFault } from "../parts/use-first-fault";
import { GroupBy } from "./group-by";
import { MoreSettings } from "./more-settings";
import { Period } from "./period";
import { ReportMade } from "./report-made";
import { TableChoices } from "./table-choices";

/** The report of a period: what is asked, the making of it, and what it says. */
export function QuarterPlace() {
  const { state, actions } = usePane();
  const styles = useStyles();
  const place = useFirstFault(state.quarter.refused);
  return (
    <div ref={place}>
      <h1 className={styles.title}>{quarterTitle(state.quarter.made)}</h1>
      <p className={styles.lead}>{ABOUT}</p>
      {state.quarter.made && <ReportMade made={state.quarter.made} />}
      <Period />
      <GroupBy />
      <TableChoices />
      <MoreSettings />
      <div className={styles.actions}>
        <Button appearance="primary" disabledFocusable={state.job !== null} onClick={actions.build}>
          Make the report
        </Button>
      </div>
      <Added />
    </div>
  );
}

const ABOUT =
  "The report is added to this workbook as new sheets, after your own. Nothing of yours is changed, and what was added can be removed again.";
