import { Button } from "@fluentui/react-components";
import { useRef, useState } from "react";
import { usePane } from "../pane-context";
import { Messages } from "../parts/messages";

/** A button that asks for the file of corrections, and what is wrong with the file that was given. */
export function OpenCorrections({ label }: { label: string }) {
  const { actions } = usePane();
  const picker = useRef<HTMLInputElement>(null);
  const [messages, setMessages] = useState<readonly string[]>([]);
  const take = (file: File | undefined) => {
    if (file) void file.text().then(actions.openCorrections).then(setMessages);
  };
  return (
    <>
      <Button size="small" onClick={() => picker.current?.click()}>
        {label}
      </Button>
      <input
        ref={picker}
        type="file"
        accept=".json,application/json"
        hidden
        aria-label={`File of corrections: ${label}`}
        onChange={(event) => take(event.target.files?.[0])}
      />
      <Messages messages={messages} />
    </>
  );
}
