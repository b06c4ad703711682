import { Button, Spinner } from "@fluentui/react-components";
import { useState } from "react";
import { useStyles } from "../../look/styles";
import { behindInWords } from "../../words/figures";
import type { BehindAnswer, FirmAnswer } from "../../worker/report/made";
import { usePane } from "../pane-context";
import { Disclosure } from "../parts/disclosure";
import { ChoiceField } from "../parts/fields";
import { DotRows } from "./dot-rows";

type Shown =
  { readonly kind: "firm"; readonly answer: FirmAnswer } | { readonly kind: "behind"; readonly answer: BehindAnswer };

/** Of each figure of a finding: the rows it is made of, and how firm it is. Nothing of this is in a release. */
export function Figures({ figures, finding }: { figures: readonly string[]; finding: number }) {
  const { state, actions } = usePane();
  const styles = useStyles();
  const [figure, setFigure] = useState("0");
  const [shown, setShown] = useState<Shown | null>(null);
  const [waits, setWaits] = useState(false);
  const ask = { finding, figure: Number(figure) };
  const busy = state.job !== null || waits;
  const choose = (value: string) => {
    setFigure(value);
    setShown(null);
  };
  const show = async (answer: Promise<Shown | null>) => {
    setWaits(true);
    setShown(await answer);
    setWaits(false);
  };
  const firm = () => show(actions.firm(ask).then((answer) => answer && { kind: "firm", answer }));
  const behind = () => show(actions.behind({ ...ask, from: 0 }).then((answer) => answer && { kind: "behind", answer }));
  const choices = figures.map((label, at) => ({ value: String(at), label }));
  return (
    <Disclosure summary="Where a figure comes from, and how firm it is">
      <ChoiceField label="Figure" value={figure} choices={choices} onChange={choose} />
      <div className={styles.actions}>
        <Button size="small" disabledFocusable={busy} onClick={() => void behind()}>
          Show the rows behind it
        </Button>
        <Button size="small" disabledFocusable={busy} onClick={() => void firm()}>
          How firm is this?
        </Button>
      </div>
      <div role="status">
        {waits && <Spinner size="tiny" label="Working it out" />}
        {shown?.kind === "firm" && <Firm answer={shown.answer} />}
        {shown?.kind === "behind" && <Behind key={figure} first={shown.answer} ask={ask} />}
      </div>
    </Disclosure>
  );
}

function Firm({ answer: { sentence, picture, notes } }: { answer: FirmAnswer }) {
  const styles = useStyles();
  return (
    <>
      <p className={styles.sentence}>{sentence}</p>
      <DotRows picture={picture} sentence={sentence} />
      <Disclosure summary="Which definitions">
        {notes.map((note) => (
          <p key={note} className={styles.sentence}>
            {note}
          </p>
        ))}
      </Disclosure>
    </>
  );
}

function Behind({ first, ask }: { first: BehindAnswer; ask: { finding: number; figure: number } }) {
  const { actions } = usePane();
  const styles = useStyles();
  const [cells, setCells] = useState(first.cells);
  const more = async () => {
    const next = await actions.behind({ ...ask, from: cells.length });
    if (next) setCells([...cells, ...next.cells]);
  };
  return (
    <>
      <p className={styles.sentence}>{behindInWords(first)}</p>
      <ul className={styles.cellList}>
        {cells.map(({ sheet, cell }, at) => (
          <li key={at}>
            <Button size="small" onClick={() => actions.showCell(sheet, cell)}>
              Show {sheet}!{cell}
            </Button>
          </li>
        ))}
      </ul>
      {cells.length < first.rows && (
        <div className={styles.actions}>
          <Button size="small" appearance="subtle" onClick={() => void more()}>
            List more cells
          </Button>
        </div>
      )}
    </>
  );
}
