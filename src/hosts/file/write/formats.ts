import { Color, Format, FormatAlign, FormatBorder } from "wasm-xlsxwriter/web";
import { CELL_LOOKS, FACE } from "../../../workbook/looks";
import { numberFormatOfCell } from "../../../workbook/number-formats";
import type { CellFormat, CellStyle } from "../../../workbook/sheets";

/** One format of the file for each look, made when it is first needed. */
export class Formats {
  private readonly made = new Map<string, Format>();

  get(style: CellStyle | undefined, format: CellFormat | undefined): Format {
    return this.cached(`${style}/${format}`, () => {
      const plain = drawn(style);
      return format ? plain.setAlign(FormatAlign.Right).setNumFormat(numberFormatOfCell(style, format)) : plain;
    });
  }

  /** Text that starts like a formula stays text when someone edits the cell. */
  quoted(style: CellStyle | undefined): Format {
    return this.cached(`${style}/quoted`, () => drawn(style).setQuotePrefix());
  }

  private cached(key: string, make: () => Format): Format {
    const known = this.made.get(key);
    if (known) return known;
    const format = make();
    this.made.set(key, format);
    return format;
  }
}

function drawn(style: CellStyle | undefined): Format {
  const { color, points, bold, italic, wraps, fill, across, indent, down, ruled } = CELL_LOOKS[style ?? "text"];
  let format = new Format().setFontName(FACE.name).setFontSize(points).setFontColor(Color.parse(color));
  if (bold) format = format.setBold();
  if (italic) format = format.setItalic();
  if (wraps) format = format.setTextWrap();
  if (fill) format = format.setBackgroundColor(Color.parse(fill));
  if (across) format = format.setAlign(ACROSS[across]);
  if (indent) format = format.setIndent(indent);
  if (ruled) format = format.setBorderBottom(FormatBorder.Thin).setBorderBottomColor(Color.parse(ruled));
  return format.setAlign(DOWN[down]);
}

const ACROSS = { left: FormatAlign.Left, center: FormatAlign.Center, right: FormatAlign.Right } as const;
const DOWN = { top: FormatAlign.Top, middle: FormatAlign.VerticalCenter, bottom: FormatAlign.Bottom } as const;
