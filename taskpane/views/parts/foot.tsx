import { useEffect, useRef } from "react";
import { useStyles } from "../../look/styles";
import { usePane } from "../pane-context";
import { JobLine } from "./job-line";
import { ToldLine } from "./told-line";

/** Always in sight at the foot of the pane: what is being done, or how the last thing ended. */
export function Foot() {
  const { job } = usePane().state;
  const styles = useStyles();
  const foot = useRef<HTMLDivElement>(null);
  useEffect(() => keepFocus(foot.current), [job]);
  return (
    <div ref={foot} tabIndex={-1} className={styles.foot}>
      <JobLine />
      <ToldLine />
    </div>
  );
}

/** The way out of a job goes with the job: the keyboard stays where it was. */
function keepFocus(foot: HTMLElement | null): void {
  const { activeElement } = document;
  if (foot && (activeElement === null || activeElement === document.body)) foot.focus({ preventScroll: true });
}
