import { objectArgument, textArgument } from "../protocol/arguments";
import { invalidArgument } from "../protocol/rich-error";
import { Ref, serverType } from "../protocol/server-type";
import { areaOfAddress } from "../workbook/area";
import type { MemorySheet } from "../workbook/memory-sheet";
import type { MemoryRange } from "./memory-range";
import { type Check, isText, keptProperties, oneOf } from "./set-properties";

/** Codes and all. Source: Microsoft, "Excel specifications and limits", header or footer. */
const isHeaderText: Check = (value) => isText(value) && (value as string).length <= 255;

const SIDES = ["LeftHeader", "CenterHeader", "RightHeader", "LeftFooter", "CenterFooter", "RightFooter"];

const headerFooterType = serverType<MemorySheet>("HeaderFooter", {
  scalars: keptProperties<MemorySheet>(
    "HeaderFooter",
    Object.fromEntries(SIDES.map((side) => [side, isHeaderText])),
    ({ page }, side, value) => page.set(side, value),
  ),
});

const headersFootersType = serverType<MemorySheet>("HeaderFooterGroup", {
  objects: { DefaultForAllPages: (sheet) => new Ref(headerFooterType, sheet) },
});

const isZoom: Check = (value) => {
  if (typeof value !== "object" || value === null) return false;
  const entries = Object.entries(value);
  const isKnown = ([key, pages]: [string, unknown]) =>
    ["horizontalFitToPages", "verticalFitToPages"].includes(key) && typeof pages === "number" && pages >= 1;
  return entries.length > 0 && entries.every(isKnown);
};

export const pageLayoutType = serverType<MemorySheet>("PageLayout", {
  scalars: keptProperties<MemorySheet>(
    "PageLayout",
    { Orientation: oneOf("Portrait", "Landscape"), PaperSize: oneOf("Letter", "A4"), Zoom: isZoom },
    ({ page }, property, value) => page.set(property, value),
  ),
  objects: { HeadersFooters: (sheet) => new Ref(headersFootersType, sheet) },
  methods: {
    SetPrintTitleRows: ({ page }, [rows]) => {
      const address = textArgument(rows, "PageLayout.SetPrintTitleRows");
      areaOfAddress(address);
      page.set("PrintTitleRows", address);
    },
    SetPrintArea: ({ page }, [range]) => {
      page.set("PrintArea", objectArgument<MemoryRange>(range, "Range", "PageLayout.SetPrintArea").area);
    },
    SetPrintMargins: ({ page }, [unit, margins]) => {
      if (unit !== "Inches" || typeof margins !== "object") throw invalidArgument("PageLayout.SetPrintMargins");
      page.set("Margins", margins);
    },
  },
});
