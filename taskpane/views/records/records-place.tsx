import { Button } from "@fluentui/react-components";
import { useStyles } from "../../look/styles";
import { countsInWords, recordsTitle } from "../../words/records";
import { usePane } from "../pane-context";
import { Decisions } from "./decisions";
import { Findings } from "./findings";
import { TablesFound } from "./tables-found";

/** Which tables were found and how they are read, what a person should see to, and what was settled. */
export function RecordsPlace() {
  const { state, actions } = usePane();
  const styles = useStyles();
  const { found, job, foundIsOld } = state;
  return (
    <>
      <h1 className={styles.title}>{recordsTitle(found)}</h1>
      <p className={styles.lead}>{found ? countsInWords(found.counts) : FIRST}</p>
      {foundIsOld && <p className={styles.lead}>{OLD}</p>}
      <div className={styles.actions}>
        <Button appearance={found ? "secondary" : "primary"} disabledFocusable={job !== null} onClick={actions.read}>
          {found ? "Read the workbook again" : "Read the workbook"}
        </Button>
      </div>
      {found && <TablesFound found={found} />}
      {found && <Findings found={found} />}
      <Decisions />
    </>
  );
}

const FIRST =
  "Reading finds the tables of children, observations and skills, and lists every row that cannot be used. Nothing in the workbook is changed, and nothing leaves it.";

const OLD =
  "A cell, a setting or a correction changed since the workbook was read. Read it again to see what it changes.";
