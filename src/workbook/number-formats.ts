import type { CellFormat, CellStyle } from "./sheets";

const NUMBER_FORMATS: Readonly<Record<CellFormat, string>> = {
  count: "#,##0",
  share: "0.0%",
  wholeShare: "0%",
  percent: '0.0"%"',
  months: "0.0",
  decimal2: "0.00",
  decimal3: "0.000",
  number: "General",
  date: "yyyy-mm-dd",
};

/** The format code of Excel. */
export function numberFormat(format: CellFormat): string {
  return NUMBER_FORMATS[format];
}

/** On a page a figure keeps two brackets' breadth from the text of the next column. */
export function numberFormatOfCell(style: CellStyle | undefined, format: CellFormat): string {
  return style === undefined || format === "number" ? NUMBER_FORMATS[format] : `${NUMBER_FORMATS[format]}_)_)`;
}
