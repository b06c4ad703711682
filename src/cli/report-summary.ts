import { leftOutLines } from "./left-out";
import type { Report } from "../report/report";

/** What a run found, in a few lines for the terminal: no child's row, no id. */
export function summaryOf(report: Report, outputs: readonly string[]): string {
  const { settings, print, findings } = report;
  return [
    ...leftOutLines(report.input),
    `Period ${settings.from} to ${settings.asOf}: ${print.followed} children followed on the last day, ${print.everFollowed} ever followed.`,
    ...report.input.map(useOf),
    findings.length === 0
      ? "No findings."
      : `Findings: ${countsOf(report)}. "windowline check" lists each with its cell.`,
    ...headlines(report),
    ...outputs.map((file) => `Written: ${file}`),
    "Nothing here is a diagnosis: talk with the child's clinician; local rules and licensed practice decide.",
  ].join("\n");
}

function useOf({ table, rows, used, leftOut }: Report["input"][number]): string {
  const reasons = Object.entries(leftOut).map(([reason, count]) => `${count} ${reason}`);
  return `${table}: ${used} of ${rows} rows used${reasons.length === 0 ? "" : `; left out: ${reasons.join(", ")}`}.`;
}

function countsOf({ findings }: Report): string {
  const of = (severity: string) => findings.filter((finding) => finding.severity === severity).length;
  return `${of("error")} rows that cannot be used, ${of("warning")} to look at, ${of("note")} notes`;
}

/** Per area, how many child-skills were met of those assessed. */
function headlines({ tables }: Report): string[] {
  const table = tables.find(({ id }) => id === "met-by-band");
  if (!table) return [];
  const at = (key: string) => table.columns.findIndex((column) => column.key === key);
  const [skill, area, met, assessed] = [at("skill"), at("area"), at("met"), at("assessed")] as const;
  const areas = new Map<string, { met: number; assessed: number }>();
  for (const row of table.rows) {
    if (row[skill] !== "all") continue;
    const sum = areas.get(String(row[area])) ?? { met: 0, assessed: 0 };
    areas.set(String(row[area]), { met: sum.met + Number(row[met]), assessed: sum.assessed + Number(row[assessed]) });
  }
  return [...areas].map(([name, sum]) => `${name}: ${sum.met} of ${sum.assessed} child-skills assessed are met.`);
}
