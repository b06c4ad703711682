import { useStyles } from "../../look/styles";
import type { ChartPreview } from "../../worker/report/made";

/** The numbers behind a chart. Wide ones scroll in their own frame, by keyboard too, never the page. */
export function NumbersTable({ chart }: { chart: ChartPreview }) {
  const styles = useStyles();
  const { headings, rows, title } = chart;
  return (
    <div className={styles.scroll} tabIndex={0} role="region" aria-label={`Numbers of: ${title}`}>
      <table className={styles.table}>
        <caption className={styles.hidden}>{title}</caption>
        <thead>
          <tr>
            {headings.map((heading, at) => (
              <th key={at} scope="col">
                {heading}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row, at) => (
            <tr key={at}>
              {row.map((text, column) =>
                column === 0 ? (
                  <th key={column} scope="row">
                    {text}
                  </th>
                ) : (
                  <td key={column}>{text}</td>
                ),
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
