import { useState } from "react";
import { useStyles } from "../../look/styles";
import { fieldMessages, MORE_SETTINGS } from "../../words/settings";
import { usePane } from "../pane-context";
import { Disclosure } from "../parts/disclosure";
import { SettingField } from "../parts/setting-field";

/** Everything else that changes a number. It stays open while one of its fields wants a look. */
export function MoreSettings() {
  const { entries, seen } = usePane().state.quarter;
  const styles = useStyles();
  const [open, setOpen] = useState(false);
  const messages = fieldMessages(entries);
  const faulty = MORE_SETTINGS.some(({ name }) => seen.includes(name) && messages.has(name));
  return (
    <div className={styles.section}>
      <Disclosure summary="More settings" open={open || faulty} onOpen={setOpen}>
        <div className={styles.fields}>
          {MORE_SETTINGS.map((words) => (
            <SettingField key={words.name} words={words} />
          ))}
        </div>
      </Disclosure>
    </div>
  );
}
