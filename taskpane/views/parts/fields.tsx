import { Field, Input, Select } from "@fluentui/react-components";
import { useStyles } from "../../look/styles";

interface Common {
  readonly label: string;
  readonly value: string;
  readonly hint?: string | undefined;
  /** What is wrong with the value; none where it is right, or not looked at yet. */
  readonly message?: string | undefined;
  readonly onChange: (value: string) => void;
  readonly onLeave?: (() => void) | undefined;
}

function around({ label, hint, message }: Common) {
  return {
    label,
    ...(hint ? { hint } : {}),
    ...(message ? { validationMessage: message, validationState: "error" as const } : {}),
  };
}

export function TextField(props: Common & { readonly type?: "text" | "date" }) {
  return (
    <Field {...around(props)}>
      <Input
        type={props.type ?? "text"}
        value={props.value}
        autoComplete="off"
        onChange={(_, { value }) => props.onChange(value)}
        onBlur={() => props.onLeave?.()}
      />
    </Field>
  );
}

export interface Choice {
  readonly value: string;
  readonly label: string;
}

export function ChoiceField(props: Common & { readonly choices: readonly Choice[] }) {
  return (
    <Field {...around(props)}>
      <Select
        className={useStyles().narrowing}
        value={props.value}
        onChange={(_, { value }) => props.onChange(value)}
        onBlur={() => props.onLeave?.()}
      >
        {props.choices.map(({ value, label }) => (
          <option key={value} value={value}>
            {label}
          </option>
        ))}
      </Select>
    </Field>
  );
}
