import type { Finding, Severity } from "../../../src/records/findings/finding";
import { ruleOf } from "../../../src/records/findings/rules";
import type { FindingGroup, FoundCell } from "./found";

/** Cells that cross to the pane at a time. */
export const CELLS_AT_ONCE = 25;

/** The findings of one rule, severity and table, in the order in which they were found. */
export interface GroupedFindings {
  readonly first: Finding;
  readonly findings: Finding[];
}

/** Those that keep rows out come first, then those to look at, then notes. */
export function groupFindings(findings: readonly Finding[]): GroupedFindings[] {
  const groups = new Map<string, GroupedFindings>();
  for (const finding of findings) {
    const key = `${finding.severity}/${finding.rule}/${finding.table}`;
    const group = groups.get(key);
    if (group) group.findings.push(finding);
    else groups.set(key, { first: finding, findings: [finding] });
  }
  return [...groups.values()].sort((a, b) => ORDER.indexOf(a.first.severity) - ORDER.indexOf(b.first.severity));
}

const ORDER: readonly Severity[] = ["error", "warning", "note"];

export function countsOf(findings: readonly Finding[]): Record<Severity, number> {
  const counts = { error: 0, warning: 0, note: 0 };
  for (const { severity } of findings) counts[severity] += 1;
  return counts;
}

export function groupOut({ first, findings }: GroupedFindings): Omit<FindingGroup, "repair"> {
  const { rule, severity, table, expected, advice } = first;
  const { explanation } = ruleOf(rule);
  const cells = cellsFrom({ first, findings }, 0);
  return { rule, severity, table, explanation, count: findings.length, expected, advice, cells };
}

export function cellsFrom({ first, findings }: GroupedFindings, from: number): FoundCell[] {
  return findings
    .slice(from, from + CELLS_AT_ONCE)
    .map(({ sheet, cell, advice }) => ({ sheet, cell, advice: advice === first.advice ? null : advice }));
}
