import { useState } from "react";
import { useStyles } from "../../look/styles";
import { OTHER, PRESETS, thresholdInWords } from "../../words/release";
import { fieldMessages, MINIMUM_CELL, RELEASE_METHOD, RELEASE_SETTINGS } from "../../words/settings";
import { usePane } from "../pane-context";
import { Disclosure } from "../parts/disclosure";
import { ChoiceField } from "../parts/fields";
import { Section } from "../parts/section";
import { SettingField } from "../parts/setting-field";

/** The threshold, and what is done with what lies below it. */
export function Rule() {
  const styles = useStyles();
  const { entries, seen } = usePane().state.quarter;
  const [open, setOpen] = useState(false);
  const messages = fieldMessages(entries);
  const faulty = RELEASE_SETTINGS.some(({ name }) => seen.includes(name) && messages.has(name));
  return (
    <Section title="Rule">
      <div className={styles.fields}>
        <Threshold />
        <SettingField words={RELEASE_METHOD} />
      </div>
      <Disclosure summary="More of the rule" open={open || faulty} onOpen={setOpen}>
        <div className={styles.fields}>
          {RELEASE_SETTINGS.map((words) => (
            <SettingField key={words.name} words={words} />
          ))}
        </div>
      </Disclosure>
    </Section>
  );
}

/** One of the usual thresholds, or a number of one's own. */
function Threshold() {
  const { state, actions } = usePane();
  const { entries, seen } = state.quarter;
  const written = String(entries.minimumCell ?? "");
  const isPreset = PRESETS.some(({ value }) => value === written);
  const [asked, setAsked] = useState(false);
  const isOther = asked || !isPreset;
  const message = seen.includes("minimumCell") ? fieldMessages(entries).get("minimumCell") : undefined;
  const choose = (value: string) => {
    setAsked(value === OTHER);
    if (value !== OTHER) actions.enter("minimumCell", value);
  };
  const least = written === "" ? 11 : Number(written);
  return (
    <>
      <ChoiceField
        label="Threshold: the least number of children in a figure"
        hint={Number.isInteger(least) ? thresholdInWords(least) : undefined}
        value={isOther ? OTHER : written}
        message={isOther ? undefined : message}
        choices={PRESETS}
        onChange={choose}
      />
      {isOther && <SettingField words={MINIMUM_CELL} />}
    </>
  );
}
