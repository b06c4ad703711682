import { CAUTION } from "../../../words/cautions";
import { monthsInWords } from "../../../words/dates";
import { capital } from "../../../words/numbers";
import { clusters, NOTABLE_P, placeOf } from "../../answer/clusters";
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
  const { headline, below, picture } = clusters(report, true);
  const page = new PrintedPage("Where referrals clustered", LANDSCAPE, true);
  page.text(headline, "title");
  page.text(`${below.join(" ")} ${childrenCounted(report)}`, "subtitle");
  page.space(4);
  if (picture) page.chartRow([picture], 180);
  page.space(4);
  pageTable(page, columns(read), table.rows.slice(0, MOST_ROWS));
  page.space(4);
  page.shortNotes([P_VALUE, EXPECTED, SAME_MONTHS], CAUTION_POINTS);
  page.text(CAUTION, "small");
  return [{ sheet: page.finished(report), about: headline }];
}

const P_VALUE = `p-value: how often chance alone would make any place and months differ as much. Above ${NOTABLE_P} nothing is called a cluster.`;
const EXPECTED =
  "Expected: what the program's own rates by age give for the time that the place's children were in the program.";
const SAME_MONTHS =
  "Same months: the p-value when each referral keeps its month. A small one says that the place differs from the others in those months; a large one does not show that the others rose too.";

function childrenCounted({ print }: Report): string {
  const [first, last] = [print.scannedMonths[0], print.scannedMonths.at(-1)];
  if (!first || !last) return "";
  return `Referrals of children in the program, ${monthsInWords(first.month, last.month)}.`;
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
    { heading: "p-value", breadth: 1, align: "middle", value: number("p", 3) },
    { heading: "Same months", breadth: 1, align: "middle", value: number("pSameMonths", 3) },
  ];
}
