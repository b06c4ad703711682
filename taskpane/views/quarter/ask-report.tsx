import { Button } from "@fluentui/react-components";
import { useState } from "react";
import { useStyles } from "../../look/styles";
import { openIn } from "../../state/understanding";
import { NOT_CONFIRMED } from "../../words/report";
import { fieldMessages, FROM, SETTING_GROUPS, type SettingGroup } from "../../words/settings";
import { usePane } from "../pane-context";
import { AsOf } from "../parts/as-of";
import { Disclosure } from "../parts/disclosure";
import { SettingField } from "../parts/setting-field";
import { GroupBy } from "./group-by";
import { RowsLost } from "./rows-lost";
import { TableChoices } from "./table-choices";

/** The day and the groups; all else is there for whoever looks for it. */
export function AskReport() {
  const { state, actions } = usePane();
  const styles = useStyles();
  return (
    <>
      <NotConfirmed />
      <div className={styles.fields}>
        <AsOf />
      </div>
      <GroupBy />
      <div className={styles.section}>
        <Disclosure summary="Tables">
          <TableChoices />
        </Disclosure>
        {SETTING_GROUPS.map((group) => (
          <Settings key={group.title} group={group} />
        ))}
      </div>
      <RowsLost />
      <div className={styles.actions}>
        <Button appearance="primary" disabledFocusable={state.job !== null} onClick={actions.build}>
          Make the report
        </Button>
      </div>
    </>
  );
}

/** Figures of a workbook that is read by a guess are not to be trusted yet. */
function NotConfirmed() {
  const { state, actions } = usePane();
  const styles = useStyles();
  const { unsettled, doubtful, choices } = openIn(state);
  if (unsettled + doubtful + choices === 0) return null;
  return (
    <div className={styles.toldRow}>
      <p className={styles.toldText}>{NOT_CONFIRMED}</p>
      <Button size="small" onClick={() => actions.openPlace("records")}>
        Read it through
      </Button>
    </div>
  );
}

/** One group of settings. It stays open while one of its fields needs checking. */
function Settings({ group }: { group: SettingGroup }) {
  const { entries, seen } = usePane().state.quarter;
  const styles = useStyles();
  const [open, setOpen] = useState(false);
  const messages = fieldMessages(entries);
  const fields = group.title === "Period and ages" ? [FROM, ...group.fields] : group.fields;
  const faulty = fields.some(({ name }) => seen.includes(name) && messages.has(name));
  return (
    <Disclosure summary={group.title} open={open || faulty} onOpen={setOpen}>
      <div className={styles.fields}>
        {fields.map((words) => (
          <SettingField key={words.name} words={words} />
        ))}
      </div>
    </Disclosure>
  );
}
