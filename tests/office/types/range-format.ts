import { invalidArgument } from "../protocol/rich-error";
import { Ref, serverType } from "../protocol/server-type";
import type { MemoryRange } from "./memory-range";
import { between, isBoolean, isColour, isNumber, keptProperties, oneOf } from "./set-properties";

const look = (prefix: string) => (range: MemoryRange, property: string, value: unknown) =>
  range.sheet.setLook(range.area, `${prefix}${property}`, value);

const fontType = serverType<MemoryRange>("RangeFont", {
  scalars: keptProperties(
    "RangeFont",
    { Bold: isBoolean, Italic: isBoolean, Size: between(1, 409), Color: isColour },
    look("Font."),
  ),
});

const fillType = serverType<MemoryRange>("RangeFill", {
  scalars: keptProperties("RangeFill", { Color: isColour }, look("Fill.")),
});

interface Edge {
  readonly range: MemoryRange;
  readonly edge: string;
}

const EDGES = ["EdgeTop", "EdgeBottom", "EdgeLeft", "EdgeRight", "InsideVertical", "InsideHorizontal"];

const borderType = serverType<Edge>("RangeBorder", {
  id: ({ edge }) => edge,
  scalars: keptProperties<Edge>(
    "RangeBorder",
    {
      Style: oneOf("None", "Continuous", "Dash", "Dot", "Double"),
      Color: isColour,
      Weight: oneOf("Hairline", "Thin", "Medium", "Thick"),
    },
    ({ range, edge }, property, value) => range.sheet.setLook(range.area, `${edge}.${property}`, value),
  ),
});

const bordersType = serverType<MemoryRange>("RangeBorderCollection", {
  item: (range, key) =>
    typeof key === "string" && EDGES.includes(key) ? new Ref(borderType, { range, edge: key }) : null,
});

export const rangeFormatType = serverType<MemoryRange>("RangeFormat", {
  scalars: {
    ...keptProperties<MemoryRange>(
      "RangeFormat",
      {
        HorizontalAlignment: oneOf("General", "Left", "Center", "Right", "Fill", "Justify"),
        VerticalAlignment: oneOf("Top", "Center", "Bottom", "Justify"),
        WrapText: isBoolean,
        IndentLevel: between(0, 250),
      },
      look(""),
    ),
    ...keptProperties<MemoryRange>(
      "RangeFormat",
      // Points: the widest column holds 255 characters, the tallest row 409 points.
      { ColumnWidth: between(0, 1343), RowHeight: between(0, 409.5) },
      ({ sheet, area }, property, value) => {
        if (!isNumber(value)) throw invalidArgument(property);
        const isWidth = property === "ColumnWidth";
        const [first, last] = isWidth ? [area.left, area.right] : [area.top, area.bottom];
        const sizes = isWidth ? sheet.columnWidths : sheet.rowHeights;
        for (let at = first; at <= last; at += 1) sizes.set(at, value as number);
      },
    ),
  },
  objects: {
    Font: (range) => new Ref(fontType, range),
    Fill: (range) => new Ref(fillType, range),
    Borders: (range) => new Ref(bordersType, range),
  },
});
