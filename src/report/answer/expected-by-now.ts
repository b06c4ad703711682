import { capital, counted, plural, shareOf } from "../../words/numbers";
import type { Table } from "../../tables/table";
import type { Report } from "../report";
import { ALL_SKILLS, type Row, readTable, type TableReader } from "../sheets/read-table";
import { settingDay } from "../sheets/setting-day";
import { notThere, type ReportFinding, tableOf, withoutTable } from "./finding";
import type { BarPicture } from "./picture";

const ID = "expected-by-now";

/** Skills past their window on the day, checked and met: the close of one kind of window says something else than another's. */
export function expectedByNow(report: Report): ReportFinding {
  const table = tableOf(report, ID);
  if (noWindows(report)) return notThere(ID, "Skills expected by now", NO_WINDOWS);
  if (!table) return withoutTable(report, ID, ID, "Skills expected by now");
  const read = readTable(table);
  const kinds = KINDS.map((kind) => ({ ...kind, rows: areaRows(table, read, kind.key) })).filter(
    ({ rows }) => read.sum(rows, "checked") > 0,
  );
  const [first, ...others] = [...kinds].sort((a, b) => read.sum(b.rows, "checked") - read.sum(a.rows, "checked"));
  if (!first) return practiceOnly(table, read) ?? notThere(ID, "Skills expected by now", NOBODY);
  return {
    id: ID,
    headline: `Of ${counted(read.sum(first.rows, "checked"))} up-to-date checks of ${first.words}, ${metOf(read, first.rows)} were met.`,
    below: [
      ...others.map(
        ({ rows, words }) => `Of ${counted(read.sum(rows, "checked"))} checks of ${words}: ${metOf(read, rows)}.`,
      ),
      whoElse(read, kinds, report),
    ],
    picture: picture(read, kinds),
  };
}

/** Where no window has a source that says how many children do the skill by then: the program's own ages, said to be that. */
function practiceOnly(table: Table, read: TableReader): ReportFinding | null {
  const rows = areaRows(table, read, "none");
  if (read.sum(rows, "checked") === 0) return null;
  return {
    id: ID,
    headline: `Of ${counted(read.sum(rows, "checked"))} up-to-date checks of skills past the program's own ages, ${metOf(read, rows)} were met.`,
    below: [PRACTICE],
    picture: picture(read, [{ key: "none", words: "", short: "", rows }]),
  };
}

const PRACTICE =
  "These ages have no source that says how many children do the skill by then: give the skills an expected share where one is published.";

const NOBODY = "No skill that is expected by now has an up-to-date check.";
const NO_WINDOWS =
  "No skill has a window: give the ages of the window in the list of skills, or in the file of the understanding.";

function noWindows({ print }: Report): boolean {
  return print.skills.length > 0 && print.skills.every(({ closesMonths }) => closesMonths === null);
}

interface Kind {
  readonly key: string;
  readonly words: string;
  readonly short: string;
}

/** Skills without a source of their window are told in the tables, where the reason is written beside them. */
const KINDS: readonly Kind[] = [
  { key: "0.75", words: "skills that 75 or more in 100 children do by the child's age", short: "" },
  { key: "0.99", words: "skills that 99 in 100 children do by the child's age", short: ", 99 in 100" },
];

interface KindRows extends Kind {
  readonly rows: readonly Row[];
}

function areaRows(table: Table, read: TableReader, kind: string): Row[] {
  return table.rows.filter((row) => read.text(row, "skill") === ALL_SKILLS && read.text(row, "kind") === kind);
}

function metOf(read: TableReader, rows: readonly Row[]): string {
  const [met, checked] = [read.sum(rows, "met"), read.sum(rows, "checked")];
  const said = shareOf(met, checked);
  return said.includes("(") ? `${counted(met)} ${said.slice(said.indexOf("("))}` : counted(met);
}

function whoElse(read: TableReader, kinds: readonly KindRows[], { settings, print }: Report): string {
  const unknown = kinds.reduce((sum, { rows }) => sum + unknownOf(read, rows), 0);
  const day = settingDay(settings, "asOf") ?? "that day";
  const children = `${plural(print.followed, "child", "children")} in the program on ${day}`;
  if (unknown === 0) return `${children}.`;
  return `${children}. Not known: ${plural(unknown, "skill needs a recheck or was", "skills need a recheck or were")} never checked.`;
}

function unknownOf(read: TableReader, rows: readonly Row[]): number {
  return read.sum(rows, "needsRecheck") + read.sum(rows, "notChecked");
}

function picture(read: TableReader, kinds: readonly KindRows[]): BarPicture {
  const bars = kinds.flatMap(({ rows, short }) =>
    [...new Set(rows.map((row) => read.text(row, "area")))].map((area) => {
      const own = rows.filter((row) => read.text(row, "area") === area);
      const [met, checked] = [read.sum(own, "met"), read.sum(own, "checked")];
      return {
        label: `${capital(area)}${short}: ${counted(met)} of ${counted(checked)}`,
        values: [met, checked - met, unknownOf(read, own)],
      };
    }),
  );
  return {
    kind: "bar share stacked",
    title: "Skills expected by now, by area",
    altText: `Bars, one per area: skills expected by now that were met, not met or lost, and not known. Met of those checked: ${bars.map(({ label }) => label).join("; ")}.`,
    parts: [
      { name: "Met", look: "solid" },
      { name: "Not yet met, or lost", look: "striped" },
      { name: "Not known", look: "hollow" },
    ],
    bars,
    x: { title: "", reversed: true },
    y: { title: "", min: 0, max: 1, step: 0.25, format: "wholeShare" },
    legend: "bottom",
  };
}
