import { useStyles } from "../../look/styles";
import type { LegendEntry } from "../../worker/report/made";

/** What each fill, line and mark of a chart stands for: drawn as in the chart, each with its word. */
export function ChartLegend({ entries }: { entries: readonly LegendEntry[] }) {
  const styles = useStyles();
  return (
    <ul className={styles.legend} aria-label="What the chart shows">
      {entries.map((entry) => (
        <li key={entry.name} className={styles.legendEntry}>
          <svg width="22" height="14" aria-hidden="true" focusable="false">
            <Symbol {...entry} />
          </svg>
          {entry.name}
        </li>
      ))}
    </ul>
  );
}

function Symbol({ shape, paint, dash }: LegendEntry) {
  if (shape === "line") return <path d="M0 7 H22" stroke={paint} strokeWidth="2.5" strokeDasharray={dash} />;
  if (shape === "diamond") return <path d="M11 2 L16 7 L11 12 L6 7 Z" fill={paint} />;
  if (shape === "circle") return <circle cx="11" cy="7" r="4" fill={paint} stroke="var(--wl-ink)" strokeWidth="0.75" />;
  if (shape === "triangle") return <path d="M11 2 L16 12 H6 Z" fill={paint} />;
  if (shape === "square") return <rect x="7" y="3" width="8" height="8" fill={paint} />;
  if (shape === "stroke") return <path d="M5 7 H17" stroke={paint} strokeWidth="2" />;
  return <rect x="1" y="1" width="20" height="12" fill={paint} stroke="var(--wl-quiet)" strokeWidth="0.75" />;
}
