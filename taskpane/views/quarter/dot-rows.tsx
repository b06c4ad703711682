import { useStyles } from "../../look/styles";
import { dotsInWords } from "../../words/figures";
import type { FirmAnswer } from "../../worker/report/made";

const STEP = 9;
const MOST = 24;

/** Each choice as a dot beside its value; the row of the report's own definitions begins with a filled one. */
export function DotRows({ picture, sentence }: { picture: FirmAnswer["picture"]; sentence: string }) {
  const styles = useStyles();
  const { rows } = picture;
  return (
    <figure className={styles.figure}>
      <table className={styles.dots} role="img" aria-label={sentence}>
        <tbody>
          {rows.map(({ label, dots, isOwn }) => (
            <tr key={label}>
              <td>{label}</td>
              <td>
                <svg width={MOST * STEP} height="14" aria-hidden="true" focusable="false">
                  {Array.from({ length: dots }, (_, at) => (
                    <Dot key={at} at={at} isFilled={isOwn && at === 0} />
                  ))}
                </svg>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <figcaption className={styles.caption}>{dotsInWords(picture)}</figcaption>
    </figure>
  );
}

function Dot({ at, isFilled }: { at: number; isFilled: boolean }) {
  const look = isFilled
    ? { r: 4.5, fill: "var(--wl-accent)" }
    : { r: 2.5, fill: "var(--wl-paper)", stroke: "var(--wl-quiet)" };
  return <circle cx={STEP * at + STEP / 2} cy="7" {...look} />;
}
