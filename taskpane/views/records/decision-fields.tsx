import type { Decision } from "../../../src/records/corrections/decisions";
import { ORDERS } from "../../words/decisions";
import type { RecordsFound } from "../../worker/records/found";
import { usePane } from "../pane-context";
import { ChoiceField, type Choice, TextField } from "../parts/fields";

interface Props {
  readonly draft: Decision;
  readonly onChange: (draft: Decision) => void;
  readonly skills: RecordsFound["skills"];
  /** What the draft is about, in words, where that is settled already. */
  readonly fixed?: string | undefined;
}

export function DecisionFields(props: Props) {
  const { draft, onChange, skills, fixed } = props;
  switch (draft.kind) {
    case "skill-alias":
      return (
        <>
          {!fixed && (
            <TextField
              label="As it is written"
              value={draft.alias}
              onChange={(alias) => onChange({ ...draft, alias })}
            />
          )}
          <ChoiceField
            label={fixed ? `${fixed}: is the skill` : "Is the skill"}
            value={draft.skill}
            choices={[
              NONE,
              ...skills.map(({ id, label }) => ({ value: id, label: label === "" ? id : `${label} (${id})` })),
            ]}
            onChange={(skill) => onChange({ ...draft, skill })}
          />
        </>
      );
    case "same-child":
      return (
        <>
          {!fixed && (
            <TextField
              label="Id that is another way of writing"
              value={draft.alias}
              onChange={(alias) => onChange({ ...draft, alias })}
            />
          )}
          <TextField
            label={fixed ? `${fixed}: is the child with the id` : "Is the child with the id"}
            hint="As it is in Children."
            value={draft.child}
            onChange={(child) => onChange({ ...draft, child })}
          />
        </>
      );
    case "date-order":
      return <DateOrderFields {...props} draft={draft} />;
    case "heading":
      return <HeadingFields {...props} draft={draft} />;
    default:
      return null;
  }
}

const NONE: Choice = { value: "", label: "Choose one" };

function DateOrderFields({ draft, onChange, fixed }: Props & { draft: Extract<Decision, { kind: "date-order" }> }) {
  return (
    <>
      {!fixed && <TableChoice value={draft.table} onChange={(table) => onChange({ ...draft, table })} />}
      {!fixed && (
        <TextField
          label="Heading of the column"
          value={draft.column}
          onChange={(column) => onChange({ ...draft, column })}
        />
      )}
      <ChoiceField
        label={fixed ? `${fixed}: text dates are read` : "Text dates are read"}
        value={draft.order}
        choices={ORDERS.map((order) => ({ value: order, label: order }))}
        onChange={(order) => onChange({ ...draft, order: ORDERS.find((each) => each === order) ?? "day first" })}
      />
    </>
  );
}

function HeadingFields({ draft, onChange, fixed }: Props & { draft: Extract<Decision, { kind: "heading" }> }) {
  const { records } = usePane().state.choices;
  const headings = records.find(({ table }) => table === draft.table)?.headings ?? [];
  return (
    <>
      {!fixed && <TableChoice value={draft.table} onChange={(table) => onChange({ ...draft, table, means: "" })} />}
      {!fixed && (
        <TextField
          label="Heading in the workbook"
          value={draft.heading}
          onChange={(heading) => onChange({ ...draft, heading })}
        />
      )}
      <ChoiceField
        label={fixed ? `${fixed}: means` : "Means"}
        value={draft.means}
        choices={[NONE, ...headings.map((heading) => ({ value: heading, label: heading }))]}
        onChange={(means) => onChange({ ...draft, means })}
      />
    </>
  );
}

function TableChoice({ value, onChange }: { value: string; onChange: (table: string) => void }) {
  const { records } = usePane().state.choices;
  const choices = records.map(({ table }) => ({ value: table, label: table }));
  return <ChoiceField label="Table" value={value} choices={choices} onChange={onChange} />;
}
