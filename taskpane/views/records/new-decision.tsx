import { useState } from "react";
import type { Repair } from "../../../src/records/corrections/decisions";
import { useStyles } from "../../look/styles";
import { type CorrectionKind, KINDS } from "../../words/decisions";
import type { RecordsFound } from "../../worker/records/found";
import { ChoiceField } from "../parts/fields";
import { DecisionForm } from "./decision-form";

const EMPTY: Readonly<Record<CorrectionKind, Repair>> = {
  "skill-alias": { kind: "skill-alias", alias: "", skill: "" },
  "same-child": { kind: "same-child", alias: "", child: "" },
  "date-order": { kind: "date-order", table: "Observations", column: "", order: "day first" },
  heading: { kind: "heading", table: "Children", heading: "", means: "" },
};

export function NewDecision({ skills }: { skills: RecordsFound["skills"] }) {
  const styles = useStyles();
  const [kind, setKind] = useState<CorrectionKind>("skill-alias");
  const [made, setMade] = useState(0);
  return (
    <div className={styles.fields}>
      <ChoiceField
        label="What it settles"
        value={kind}
        choices={KINDS.map((each) => ({ value: each.kind, label: each.label }))}
        onChange={(value) => setKind(KINDS.find((each) => each.kind === value)?.kind ?? kind)}
      />
      <DecisionForm key={`${kind} ${made}`} draft={EMPTY[kind]} skills={skills} onKept={() => setMade(made + 1)} />
    </div>
  );
}
