import { useStyles } from "../../look/styles";
import { MAKE_AGAIN, OLD_REPORT, quarterTitle } from "../../words/report";
import { usePane } from "../pane-context";
import { Added } from "../parts/added";
import { Disclosure } from "../parts/disclosure";
import { useFirstFault } from "../parts/use-first-fault";
import { AskReport } from "./ask-report";
import { LastQuarter } from "./last-quarter";
import { ReportMade } from "./report-made";

/** The report of a period: what is asked, the making of it, and what it says. */
export function QuarterPlace() {
  const { made, isOld, refused } = usePane().state.quarter;
  const styles = useStyles();
  const place = useFirstFault(refused);
  return (
    <div ref={place}>
      <h1 className={styles.title}>{quarterTitle(made)}</h1>
      {made === null ? (
        <>
          <p className={styles.lead}>{ABOUT}</p>
          <AskReport />
        </>
      ) : (
        <>
          {isOld && <p className={styles.lead}>{OLD_REPORT}</p>}
          <ReportMade made={made} />
          <Disclosure summary={MAKE_AGAIN} {...(isOld && { open: true })}>
            <AskReport />
          </Disclosure>
        </>
      )}
      <LastQuarter />
      <Added />
    </div>
  );
}

const ABOUT =
  "The report goes on new sheets after your own. Your own sheets stay as they are, and you can remove the new ones.";
