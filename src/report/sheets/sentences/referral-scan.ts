import type { Table } from "../../../tables/table";
import { pInWords, plural } from "../../../words/numbers";
import { ASK_FIRST, clusterInWords, NOTABLE_P } from "../../answer/clusters";
import { type Row, readTable } from "../read-table";

export function referralScanSentences(table: Table): readonly string[] {
  const read = readTable(table);
  const first = table.rows[0] as Row;
  const p = pInWords(read.number(first, "p") ?? 1);
  const notable = table.rows.filter((row) => (read.number(row, "p") as number) <= NOTABLE_P).length;
  if (notable === 0)
    return [
      "No place and months had more referrals than chance gives",
      `The nearest: ${clusterInWords(read, first)} (${p} for all places and months together).`,
    ];
  return [
    clusterInWords(read, first),
    `${p.replace("p ", "p-value ")} for all places and months together; ${plural(notable, "row of the table has", "rows of the table have")} one of ${NOTABLE_P} or less.`,
    ASK_FIRST,
  ];
}
