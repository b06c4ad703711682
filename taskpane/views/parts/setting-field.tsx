import type { FieldWords } from "../../words/settings";
import { fieldMessages } from "../../words/settings";
import { usePane } from "../pane-context";
import { ChoiceField, TextField } from "./fields";

/** One setting, with its message once the field was left. */
export function SettingField({ words }: { words: FieldWords }) {
  const { state, actions } = usePane();
  const { entries, seen } = state.quarter;
  const { name, label, hint, choices, isDate } = words;
  const message = seen.includes(name) ? fieldMessages(entries).get(name) : undefined;
  const common = {
    label,
    hint,
    message,
    value: String(entries[name] ?? ""),
    onChange: (value: string) => actions.enter(name, value),
    onLeave: () => actions.leaveField(name),
  };
  if (choices) return <ChoiceField {...common} choices={choices} />;
  return <TextField {...common} type={isDate ? "date" : "text"} />;
}
