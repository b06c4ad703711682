import { type ReactNode, useId } from "react";
import { useStyles } from "../../look/styles";

export function Section({ title, about, children }: { title: string; about?: ReactNode; children: ReactNode }) {
  const styles = useStyles();
  const id = useId();
  return (
    <section className={styles.section} aria-labelledby={id}>
      <h2 id={id} className={styles.sectionTitle}>
        {title}
      </h2>
      {about && <p className={styles.quiet}>{about}</p>}
      {children}
    </section>
  );
}
