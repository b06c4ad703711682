import { CAUTION } from "../../../words/cautions";
import type { StratumShare } from "../../../statistics/standardise";
import type { SitesBeside } from "../../../tables/trend-sites";
import { capital, counted, wholePercent } from "../../../words/numbers";
import type { CellOut, CellStyle } from "../../../workbook/sheets";
import { tableOf } from "../../answer/finding";
import type { Report } from "../../report";
import { sentencesOf } from "../sentences/sentences";
import { areaLines, type AreaLines } from "../trend-lines";
import { stepOf } from "./area-cells";
import type { TitledSheet } from "./area-page";
import { type PageColumn, pageTable } from "./page-table";
import { CAUTION_POINTS, PrintedPage } from "./printed-page";

/** The last eight quarters by area, and by group where the report has groups, with counts. */
export function trendPage(report: Report): TitledSheet[] {
  const table = tableOf(report, "trend");
  const quarters = (report.print.trend?.quarters ?? []).map(({ quarter }) => quarter);
  if (!table || quarters.length === 0) return [];
  const [title = "", ...more] = sentencesOf(table, report);
  const page = new PrintedPage("Trend", [20, 14, ...quarters.map(() => 11.2)], true);
  page.text(title, "title");
  page.text(
    "Up-to-date skill checks of the children in the program at the end of each quarter: met, of all.",
    "subtitle",
  );
  page.space(4);
  const lines = areaLines(table, quarters).flatMap(({ area, groups }) => groups.map((group) => ({ area, group })));
  const isGrouped = lines.some(({ group }) => group.name !== "");
  pageTable(
    page,
    [
      { heading: "Area", breadth: 1, align: "left", value: ({ area }) => capital(area) },
      {
        heading: isGrouped ? "Group" : "Children",
        breadth: 1,
        align: "left",
        value: ({ group }) => group.name || "all",
      },
      ...quarters.map((heading, at) => ({
        heading,
        breadth: 1,
        align: "middle" as const,
        value: (line: Line) => cellOf(line, at),
      })),
    ],
    lines,
  );
  page.space(5);
  page.text(SHADES, "small");
  page.space(6);
  if (!isGrouped) siteTable(page, report);
  const [late = ""] = table.notes;
  const warnings = table.notes.filter((note) => note.startsWith("Warning: "));
  page.shortNotes([...more, late, ...warnings, EVERY_QUARTER], CAUTION_POINTS);
  page.text(CAUTION, "small");
  return [{ sheet: page.finished(report), about: "The last eight quarters by area, with counts" }];
}

const EVERY_QUARTER =
  "A child counts in every quarter in which it is in the program, so quarters next to each other share most children. All quarters are counted with the skills and settings of this report.";

const MOST_SITES = 4;

/** Each site in the first and the last quarter that can be compared; with groups the rows above say as much. */
function siteTable(page: PrintedPage, { print }: Report): void {
  const areas = print.trend?.sites ?? [];
  const [first] = areas;
  if (!first) return;
  const names = [...new Set(areas.flatMap(({ sites }) => sites.map(({ name }) => name)))];
  const change = (shares: readonly StratumShare[] | undefined) =>
    (shares ?? []).map(({ count, of }) => `${counted(count)} of ${counted(of)}`).join(" to ") || "–";
  pageTable(
    page,
    [
      {
        heading: "Area, by site",
        breadth: 1,
        align: "left",
        value: ({ area }) => capital(area),
      },
      {
        heading: "All, by weight",
        breadth: 1,
        align: "left",
        value: ({ standardised }) => standardised?.map(wholePercent).join(" to ") ?? "–",
      },
      ...names.slice(0, MOST_SITES).map((name): PageColumn<SitesBeside> => ({
        heading: name,
        breadth: 2,
        align: "middle",
        value: ({ sites }) => change(sites.find((site) => site.name === name)?.shares),
      })),
    ],
    areas,
  );
  page.space(5);
  const more = names.length > MOST_SITES ? " The other sites are in the data workbook." : "";
  page.text(`By site: ${first.quarters.join(" to ")}. ${BY_WEIGHT}${more}`, "small");
}

const BY_WEIGHT =
  "All, by weight: the share met when each site weighs the same in both quarters, so that children moving between sites do not look like a trend.";

interface Line {
  readonly area: string;
  readonly group: AreaLines["groups"][number];
}

const SHADES =
  "Shades: under half, half to 74%, 75% to 89%, 90% or more met. Skill by skill the quarters are in the data workbook.";

function cellOf({ group }: Line, at: number): CellOut {
  const { met, of } = group.cells[at] ?? { met: 0, of: 0 };
  if (of === 0) return { value: "–", style: "step0" };
  const style: CellStyle = `step${stepOf(met / of)}`;
  return { value: `${counted(met)} of ${counted(of)}`, style };
}
