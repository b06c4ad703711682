import type { Table } from "../../../tables/table";
import { quarterEndInWords } from "../../../words/dates";
import { plural, shareOf } from "../../../words/numbers";
import type { Report } from "../../report";
import { readTable } from "../read-table";
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
  const last = quarters.at(-1);
  // one check is nothing to compare a hundred with
  const first = quarters.find(({ of }) => last && of >= LEAST_TO_COMPARE * last.of);
  if (!first || !last) return ["No child in the program at the end of these quarters has an up-to-date check"];
  const asOf = settingDay(settings, "asOf") ?? `the last day of ${quarterEndInWords(last.quarter)}`;
  const day = `${asOf}${isProvisional(table) ? " (provisional)" : ""}`;
  const now = shareOf(last.met, last.of);
  const then = `${shareOf(first.met, first.of)} were met at the end of ${quarterEndInWords(first.quarter)}`;
  const title = first === last ? `${now} were met on ${day}` : `${then}, and ${now} on ${day}`;
  return [`Of up-to-date skill checks, ${title}`, `${AGES}${reversed(table)}`];
}

/** A quarter with fewer checks than this share of the last one is passed over (our choice). */
const LEAST_TO_COMPARE = 0.25;
const AGES = "A share moves with the ages of the children in the program: a change is not by itself progress or loss.";

export function isProvisional(table: Table): boolean {
  const at = table.columns.findIndex(({ key }) => key === "provisional");
  return table.rows.some((row) => row[at] === true);
}

function reversed({ notes }: Table): string {
  const warnings = notes.filter((note) => note.startsWith("Warning: ")).length;
  if (warnings === 0) return "";
  return ` For ${plural(warnings, "area", "areas")} the direction changes when sites are read apart: the notes say which.`;
}
