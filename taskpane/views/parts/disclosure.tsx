import type { ReactNode } from "react";
import { useStyles } from "../../look/styles";

/** A line that opens what belongs to it; the browser's own, so that keyboard, screen reader and page search know it. */
export function Disclosure({
  summary,
  children,
  open,
  onOpen,
}: {
  summary: ReactNode;
  children: ReactNode;
  open?: boolean;
  onOpen?: (open: boolean) => void;
}) {
  const styles = useStyles();
  return (
    <details className={styles.disclosure} open={open} onToggle={(event) => onOpen?.(event.currentTarget.open)}>
      <summary>{summary}</summary>
      <div className={styles.inside}>{children}</div>
    </details>
  );
}
