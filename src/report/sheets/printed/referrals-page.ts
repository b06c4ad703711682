import { CAUTION } from "../../../words/cautions";
import { capital } from "../../../words/numbers";
import { tableOf } from "../../answer/finding";
import type { Report } from "../../report";
import { periodInWords } from "../page";
import { type Row, readTable, type TableReader } from "../read-table";
import { referralsCharts, REFERRALS_READING } from "../referrals-charts";
import { sentencesOf } from "../sentences/sentences";
import type { TitledSheet } from "./area-page";
import { type PageColumn, pageTable } from "./page-table";
import { CAUTION_POINTS, PrintedPage } from "./printed-page";
import { LANDSCAPE } from "./widths";

/** Referrals by site, area, and who referred, against those that the children's ages explain. */
export function referralsPage(report: Report): TitledSheet[] {
  const table = tableOf(report, "referrals");
  if (!table) return [];
  const read = readTable(table);
  const [title = table.title, ...more] = sentencesOf(table, report);
  const page = new PrintedPage("Referrals", LANDSCAPE, true);
  page.text(title, "title");
  page.text(`${table.population}. ${periodInWords(report)}.`, "subtitle");
  page.space(4);
  const charts = referralsCharts(table);
  if (charts.length > 0) page.chartRow(charts, 172);
  page.space(2);
  const rows = ["site", "area"].flatMap((dimension) =>
    table.rows.filter((row) => read.text(row, "dimension") === dimension).slice(0, MOST_OF_A_KIND),
  );
  pageTable(page, columns(read), rows);
  page.space(4);
  page.notes([...more, REFERRALS_READING], CAUTION_POINTS);
  page.text(CAUTION, "small");
  return [{ sheet: page.finished(report), about: title }];
}

const MOST_OF_A_KIND = 6;

function columns(read: TableReader): PageColumn<Row>[] {
  const number = (key: string, decimals: number) => (row: Row) => read.number(row, key)?.toFixed(decimals) ?? "–";
  const isSite = (row: Row) => read.text(row, "dimension") === "site";
  return [
    {
      heading: "By site, and by area named",
      breadth: 3,
      align: "left",
      value: (row) => `${isSite(row) ? "Site " : ""}${capital(read.text(row, "value") || "not recorded")}`,
    },
    { heading: "Child-months", breadth: 1, align: "middle", value: number("childMonths", 0) },
    { heading: "Referrals", breadth: 1, align: "middle", value: number("referrals", 0) },
    { heading: "Children referred", breadth: 1, align: "middle", value: number("childrenReferred", 0) },
    { heading: "Per 100 child-months", breadth: 2, align: "middle", value: number("per100ChildMonths", 1) },
    { heading: "Expected for their ages", breadth: 2, align: "middle", value: number("expected", 1) },
    { heading: "Times expected", breadth: 1, align: "middle", value: number("ratio", 2) },
    {
      heading: "Likely range",
      breadth: 1,
      align: "middle",
      value: (row) =>
        read.number(row, "lower") === null ? "–" : `${number("lower", 1)(row)} to ${number("upper", 1)(row)}`,
    },
  ];
}
