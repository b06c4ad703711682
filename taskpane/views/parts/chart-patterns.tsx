import type { ReactNode } from "react";
import { useStyles } from "../../look/styles";

/** The patterns that charts fill their bars with: told apart without colour, on a grey print too. */
export function ChartPatterns() {
  const styles = useStyles();
  return (
    <svg className={styles.hidden} aria-hidden="true" focusable="false" width="0" height="0">
      <defs>
        <Pattern id="wl-striped" size={7}>
          <path d="M-1 8 L8 -1 M-1 1 L1 -1 M6 8 L8 6" stroke="var(--wl-accent)" strokeWidth="2.2" />
        </Pattern>
        <Pattern id="wl-lined" size={5}>
          <path d="M2.5 0 V5" stroke="var(--wl-quiet)" strokeWidth="1.2" />
        </Pattern>
        <Pattern id="wl-dotted" size={6} ground="var(--wl-pale)">
          <circle cx="3" cy="3" r="0.8" fill="var(--wl-quiet)" />
        </Pattern>
        <Pattern id="wl-crossed" size={7}>
          <path d="M0 0 L7 7 M7 0 L0 7" stroke="var(--wl-ink)" strokeWidth="1.4" />
        </Pattern>
      </defs>
    </svg>
  );
}

interface PatternProps {
  readonly id: string;
  readonly size: number;
  readonly ground?: string;
  readonly children: ReactNode;
}

function Pattern({ id, size, ground = "var(--wl-paper)", children }: PatternProps) {
  return (
    <pattern id={id} width={size} height={size} patternUnits="userSpaceOnUse">
      <rect width={size} height={size} fill={ground} />
      {children}
    </pattern>
  );
}
