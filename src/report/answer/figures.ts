import type { Figure } from "../../tables/definition-check/figure";
import { capital, counted } from "../../words/numbers";
import type { Report } from "../report";
import { ALL_SKILLS, readTable } from "../sheets/read-table";
import { type FindingId, tableOf } from "./finding";
import { shownSkills } from "./reached-by-age";

/** One figure of a finding, whose rows can be shown and whose definitions can be checked. */
export interface FindingFigure {
  readonly label: string;
  readonly figure: Figure;
}

/** The figures of a finding that are made of observations; empty for those of referrals and ratings. */
export function figuresOf(id: FindingId, report: Report): FindingFigure[] {
  if (id === "expected-by-now") return expectedFigures(report);
  return id === "reached-by-age" ? ageFigures(report) : [];
}

const KIND_WORDS: Readonly<Record<string, string>> = { none: "the program's own ages" };

function expectedFigures(report: Report): FindingFigure[] {
  const table = tableOf(report, "expected-by-now");
  if (!table) return [];
  const read = readTable(table);
  return table.rows.flatMap((row) => {
    const [checked, met] = [read.number(row, "checked") ?? 0, read.number(row, "met") ?? 0];
    if (read.text(row, "skill") !== ALL_SKILLS || checked === 0) return [];
    const [area, kind] = [read.text(row, "area"), read.text(row, "kind")];
    const words = KIND_WORDS[kind] ?? `expected of ${Math.round(100 * Number(kind))} in 100`;
    return {
      label: `${capital(area)}, ${words}: ${counted(met)} of ${counted(checked)} met`,
      figure: { table: "expected-by-now", groups: [], skill: ALL_SKILLS, area, kind, band: null, column: "shareMet" },
    };
  });
}

function ageFigures(report: Report): FindingFigure[] {
  const table = tableOf(report, "age-when-met");
  if (!table) return [];
  const read = readTable(table);
  const groupCount = table.columns.findIndex(({ key }) => key === "skill");
  return shownSkills(report, []).flatMap((skill) => {
    const row = table.rows.find((each) => read.text(each, "skill") === skill.id);
    const half = row ? read.number(row, "p50") : null;
    if (!row || half === null) return [];
    const groups = row.slice(0, groupCount).map(String);
    return {
      label: `Half met “${skill.label}” by ${half.toFixed(1)} months`,
      figure: { table: "age-when-met", groups, skill: skill.id, area: null, kind: null, band: null, column: "p50" },
    };
  });
}
