import type { Decision } from "../../../src/records/corrections/decisions";
import { useStyles } from "../../look/styles";
import type { RecordsFound, Repair } from "../../worker/records/found";
import { DecisionForm } from "./decision-form";

type Skills = RecordsFound["skills"];

/** The decision that would settle a group of findings, filled in as far as the workbook tells. */
export function RepairForm({ repair, skills }: { repair: Repair; skills: Skills }) {
  const styles = useStyles();
  const drafts = draftsOf(repair);
  if (drafts.length === 0) return null;
  return (
    <div className={styles.boxed}>
      <h4 className={styles.smallTitle}>Settle it with a correction</h4>
      {drafts.map(({ draft, about }) => (
        <DecisionForm key={JSON.stringify(draft)} draft={draft} about={about} skills={skills} />
      ))}
    </div>
  );
}

interface Drafted {
  readonly draft: Decision;
  readonly about: string;
}

function draftsOf(repair: Repair): Drafted[] {
  switch (repair.kind) {
    case "skill-alias":
      return repair.writings.map(({ text, cells }) => ({
        draft: { kind: "skill-alias", alias: text, skill: "" },
        about: `“${text}”, ${cells === 1 ? "1 cell" : `${cells} cells`}`,
      }));
    case "same-child":
      return repair.writings.map(({ text, cells }) => ({
        draft: { kind: "same-child", alias: text, child: "" },
        about: `“${text}”, ${cells === 1 ? "1 cell" : `${cells} cells`}`,
      }));
    case "date-order":
      return repair.columns.map((column) => ({
        draft: { kind: "date-order", table: repair.table, column, order: "day first" },
        about: `${repair.table}, ${column}`,
      }));
    case "heading":
      return repair.headings.map((heading) => ({
        draft: { kind: "heading", table: repair.table, heading, means: "" },
        about: `“${heading}” in ${repair.table}`,
      }));
  }
}
