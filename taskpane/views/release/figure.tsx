import { HIDDEN } from "../../../src/release/release-table";
import { useStyles } from "../../look/styles";
import { HELD_BACK } from "../../words/release";

/** A figure of a release. What is held back has its word beside its symbol, and is never an empty cell. */
export function Figure({ text }: { text: string }) {
  const styles = useStyles();
  if (text !== HIDDEN) return <td>{text}</td>;
  return (
    <td className={styles.heldBack}>
      {HIDDEN} <span>{HELD_BACK}</span>
    </td>
  );
}
