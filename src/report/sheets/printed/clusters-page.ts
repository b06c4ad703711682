import { CAUTION } from "../../../words/cautions";
import { monthsInWords } from "../../../words/dates";
import { capital } from "../../../words/numbers";
import { ASK_FIRST, clusters, monthsPicture, NOTABLE_P, placeOf } from "../../answer/clusters";
import { tableOf } from "../../answer/finding";
import type { Report } from "../../report";
import { type Row, readTable, type TableReader } from "../read-table";
import type { TitledSheet } from "./area-page";
import { type PageColumn, pageTable } from "./page-table";
import { CAUTION_POINTS, PrintedPage } from "./printed-page";
import { LANDSCAPE } from "./widths";

const MOST_ROWS = 6;

/** Places and months with more referrals than expected, the likeliest first. */
export function clustersPage(report: Report): TitledSheet[] {
  const table = tableOf(report, "referral-scan");
  if (!table) return [];
  const read = readTable(table);
  const { headline } = clusters(report);
  const picture = monthsPicture(report, read, table.rows[0] as Row, true);
  const page = new PrintedPage("Where referrals clustered", LANDSCAPE, true);
  page.text(headline, "title");
  page.text(`${ASK_FIRST} ${table.population}.`, "subtitle");
  page.space(4);
  if (picture) page.chartRow([picture], 180);
  page.space(4);
  pageTable(page, columns(read), table.rows.slice(0, MOST_ROWS));
  page.space(4);
  page.text(
    `p-value: how often chance alone would make any place and months differ as much. Above ${NOTABLE_P} nothing is called a cluster.`,
    "small",
  );
  page.notes(table.notes, CAUTION_POINTS);
  page.text(CAUTION, "small");
  return [{ sheet: page.finished(report), about: headline }];
}

function columns(read: TableReader): PageColumn<Row>[] {
  const number = (key: string, decimals: number) => (row: Row) => read.number(row, key)?.toFixed(decimals) ?? "–";
  return [
    { heading: "Place", breadth: 2, align: "left", value: (row) => placeOf(read, row) },
    {
      heading: "Area",
      breadth: 2,
      align: "left",
      value: (row) => capital(read.text(row, "area").replace(/^all$/, "every area")),
    },
    {
      heading: "Months",
      breadth: 3,
      align: "left",
      value: (row) => monthsInWords(read.text(row, "firstMonth"), read.text(row, "lastMonth")),
    },
    { heading: "Referrals", breadth: 1, align: "middle", value: number("observed", 0) },
    { heading: "Expected", breadth: 1, align: "middle", value: number("expected", 1) },
    { heading: "Times expected", breadth: 1, align: "middle", value: number("ratio", 1) },
    { heading: "p-value, all places and months together", breadth: 2, align: "middle", value: number("p", 3) },
  ];
}
