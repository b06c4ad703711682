import { Color, Format, FormatAlign, FormatBorder } from "wasm-xlsxwriter/web";
import { INK } from "../../../workbook/ink";
import { numberFormatOfCell } from "../../../workbook/number-formats";
import type { CellFormat, CellStyle } from "../../../workbook/sheets";

/** One format of the file for each look, made when it is first needed. */
export class Formats {
  private readonly made = new Map<string, Format>();

  get(style: CellStyle | undefined, format: CellFormat | undefined): Format {
    return this.cached(`${style}/${format}`, () => {
      const plain = styles[style ?? "text"](new Format());
      return format ? plain.setAlign(FormatAlign.Right).setNumFormat(numberFormatOfCell(style, format)) : plain;
    });
  }

  /** Text that starts like a formula stays text when someone edits the cell. */
  quoted(style: CellStyle | undefined): Format {
    return this.cached(`${style}/quoted`, () => styles[style ?? "text"](new Format()).setQuotePrefix());
  }

  private cached(key: string, make: () => Format): Format {
    const known = this.made.get(key);
    if (known) return known;
    const format = make();
    this.made.set(key, format);
    return format;
  }
}

const styles: Readonly<Record<CellStyle, (format: Format) => Format>> = {
  title: (f) => ink(f).setBold().setFontSize(16).setTextWrap().setAlign(FormatAlign.VerticalCenter),
  subtitle: (f) => f.setFontColor(Color.parse(INK.quiet)).setTextWrap().setAlign(FormatAlign.Top),
  section: (f) => accent(f).setBold().setFontSize(12).setAlign(FormatAlign.Bottom),
  note: (f) => ink(f).setTextWrap().setAlign(FormatAlign.Top),
  heading: (f) => heading(f).setAlign(FormatAlign.Left),
  headingRight: (f) => heading(f).setAlign(FormatAlign.Right).setIndent(1),
  label: (f) => ink(f).setBold().setTextWrap().setAlign(FormatAlign.Top),
  text: (f) => ink(f).setAlign(FormatAlign.VerticalCenter),
  wrapped: (f) => ink(f).setTextWrap().setAlign(FormatAlign.VerticalCenter),
  total: (f) => ink(f).setItalic().setAlign(FormatAlign.VerticalCenter).setBackgroundColor(Color.parse(INK.tint)),
  marked: (f) => accent(f).setBold().setTextWrap().setAlign(FormatAlign.Top),
  heldBack: (f) => accent(f).setBold().setAlign(FormatAlign.Right).setIndent(1).setAlign(FormatAlign.VerticalCenter),
};

function heading(format: Format): Format {
  return ink(format)
    .setBold()
    .setTextWrap()
    .setAlign(FormatAlign.Bottom)
    .setBackgroundColor(Color.parse(INK.tint))
    .setBorderBottom(FormatBorder.Thin)
    .setBorderBottomColor(Color.parse(INK.accent));
}

function ink(format: Format): Format {
  return format.setFontColor(Color.parse(INK.text));
}

function accent(format: Format): Format {
  return format.setFontColor(Color.parse(INK.accent));
}
