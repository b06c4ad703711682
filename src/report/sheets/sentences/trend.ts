import type { Table } from "../../../tables/table";
import type { Report } from "../../report";
import { readTable } from "../read-table";
import { percentOf, plural } from "../../../words/numbers";
import { settingDay } from "../setting-day";

export function trendSentences(table: Table, { settings }: Report): readonly string[] {
  const read = readTable(table);
  const quarters = [...new Set(table.rows.map((row) => read.text(row, "quarter")))]
    .sort()
    .map((quarter) => {
      const rows = table.rows.filter((row) => read.text(row, "quarter") === quarter);
      return { quarter, met: read.sum(rows, "met"), of: read.sum(rows, "assessed") };
    })
    .filter(({ of }) => of > 0);
  const [first, last] = [quarters[0], quarters.at(-1)];
  if (!first || !last) return ["No child followed at the end of these quarters has a current look"];
  const asOf = settingDay(settings, "asOf") ?? `the end of ${last.quarter}`;
  const now = `${percentOf(last.met, last.of)} on ${asOf}${isProvisional(table) ? " (provisional)" : ""}`;
  const change =
    first === last
      ? `${now} are met`
      : `${percentOf(first.met, first.of)} were met at the end of ${first.quarter} and ${now}`;
  return [
    `Of the child-skills with a current look, ${change}`,
    ...table.notes.slice(0, 1),
    `${AGES}${reversed(table)}`,
  ];
}

const AGES =
  "The share moves with the ages of the children who are followed: a change is no progress or loss by itself.";

export function isProvisional(table: Table): boolean {
  const at = table.columns.findIndex(({ key }) => key === "provisional");
  return table.rows.some((row) => row[at] === true);
}

function reversed({ notes }: Table): string {
  const warnings = notes.filter((note) => note.startsWith("Warning: ")).length;
  if (warnings === 0) return "";
  return ` For ${plural(warnings, "skill", "skills")} the direction turns around when sites are read apart: see the warnings below the rows.`;
}
