/// <reference types="office-js" />
import { INK } from "../../../workbook/ink";
import { numberFormatOfCell } from "../../../workbook/number-formats";
import type { CellStyle } from "../../../workbook/sheets";
import type { LookArea } from "./look-areas";
import { rangeOf } from "./ranges";

interface Look {
  readonly colour: string;
  readonly bold?: boolean;
  readonly italic?: boolean;
  readonly points?: number;
  readonly wraps?: boolean;
  readonly fill?: string;
  readonly across?: "Left" | "Right";
  readonly indent?: number;
  readonly down: "Top" | "Center" | "Bottom";
  readonly isUnderlined?: boolean;
}

const HEADING = {
  colour: INK.text,
  bold: true,
  wraps: true,
  fill: INK.tint,
  down: "Bottom",
  isUnderlined: true,
} as const;

const LOOKS: Readonly<Record<CellStyle, Look>> = {
  title: { colour: INK.text, bold: true, points: 16, wraps: true, down: "Center" },
  subtitle: { colour: INK.quiet, wraps: true, down: "Top" },
  section: { colour: INK.accent, bold: true, points: 12, down: "Bottom" },
  note: { colour: INK.text, wraps: true, down: "Top" },
  heading: { ...HEADING, across: "Left" },
  headingRight: { ...HEADING, across: "Right", indent: 1 },
  label: { colour: INK.text, bold: true, wraps: true, down: "Top" },
  text: { colour: INK.text, down: "Center" },
  wrapped: { colour: INK.text, wraps: true, down: "Center" },
  total: { colour: INK.text, italic: true, fill: INK.tint, down: "Center" },
  marked: { colour: INK.accent, bold: true, wraps: true, down: "Top" },
  heldBack: { colour: INK.accent, bold: true, across: "Right", indent: 1, down: "Center" },
};

export function applyLook(sheet: Excel.Worksheet, { area, style, format }: LookArea): void {
  const range = rangeOf(sheet, area);
  if (style) paint(range.format, LOOKS[style]);
  if (!format) return;
  // One format for all cells; the type only knows arrays.
  range.numberFormat = numberFormatOfCell(style, format) as unknown as string[][];
  range.format.horizontalAlignment = "Right";
}

function paint(format: Excel.RangeFormat, look: Look): void {
  const { font } = format;
  font.color = look.colour;
  if (look.bold) font.bold = true;
  if (look.italic) font.italic = true;
  if (look.points !== undefined) font.size = look.points;
  if (look.wraps) format.wrapText = true;
  if (look.fill) format.fill.color = look.fill;
  if (look.across) format.horizontalAlignment = look.across;
  if (look.indent !== undefined) format.indentLevel = look.indent;
  format.verticalAlignment = look.down;
  if (look.isUnderlined) underline(format);
}

function underline(format: Excel.RangeFormat): void {
  const edge = format.borders.getItem("EdgeBottom");
  edge.style = "Continuous";
  edge.color = INK.accent;
}
