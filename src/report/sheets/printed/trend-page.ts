import { CAUTION } from "../../../words/cautions";
import { capital, counted } from "../../../words/numbers";
import type { CellOut, CellStyle } from "../../../workbook/sheets";
import { tableOf } from "../../answer/finding";
import type { Report } from "../../report";
import { sentencesOf } from "../sentences/sentences";
import { areaLines, type AreaLines } from "../trend-lines";
import { stepOf } from "./area-cells";
import type { TitledSheet } from "./area-page";
import { pageTable } from "./page-table";
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
  pageTable(
    page,
    [
      { heading: "Area", breadth: 1, align: "left", value: ({ area }) => capital(area) },
      {
        heading: lines.some(({ group }) => group.name !== "") ? "Group" : "Children",
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
  page.notes([SHADES, ...more, ...table.notes], CAUTION_POINTS);
  page.text(CAUTION, "small");
  return [{ sheet: page.finished(report), about: "The last eight quarters by area, with counts" }];
}

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
