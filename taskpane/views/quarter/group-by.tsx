import { Button, Checkbox } from "@fluentui/react-components";
import { useStyles } from "../../look/styles";
import { usePane } from "../pane-context";
import { Section } from "../parts/section";
import { useFollow } from "../parts/use-follow";

/** Columns of Children to make the tables by; several are crossed. */
export function GroupBy() {
  const { state, actions } = usePane();
  const styles = useStyles();
  const { found, quarter, job } = state;
  const by = Array.isArray(quarter.entries.by) ? (quarter.entries.by as readonly string[]) : [];
  const { place, ask } = useFollow(found !== null);
  const read = () => {
    ask();
    actions.read();
  };
  const toggle = (heading: string, ticked: boolean) =>
    actions.enter("by", ticked ? [...by, heading] : by.filter((each) => each !== heading));
  return (
    <Section title="Groups" about="Tick none for all children together; several are crossed.">
      <div ref={place} tabIndex={-1} className={styles.unringed}>
        {!found && (
          <div className={styles.actions}>
            <Button size="small" disabledFocusable={job !== null} onClick={read}>
              Read the workbook to see its columns
            </Button>
          </div>
        )}
        {found && found.groupColumns.length === 0 && (
          <p className={styles.sentence}>Children has no column to group by.</p>
        )}
        {found && found.groupColumns.length > 0 && (
          <fieldset className={styles.checks}>
            <legend className={styles.hidden}>Columns to group by</legend>
            {found.groupColumns.map(({ heading, values }) => (
              <Checkbox
                key={heading}
                label={`${heading} (${values === 1 ? "1 value" : `${values} different values`})`}
                checked={by.includes(heading)}
                onChange={(_, { checked }) => toggle(heading, checked === true)}
              />
            ))}
          </fieldset>
        )}
      </div>
    </Section>
  );
}
