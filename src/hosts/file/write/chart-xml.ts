import type { ChartOut } from "../../../workbook/sheets";
export function polishChart(xml: string, _chart: ChartOut): string {
  return xml;
}
