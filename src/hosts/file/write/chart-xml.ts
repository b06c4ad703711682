import type { AxisOut, ChartOut } from "../../../workbook/sheets";
import { INK } from "../../../workbook/ink";

/**
 * What the writing library has no call for, or gets wrong: pale grid lines, broad bars, the distance of axis marks, categories read
 * downwards. Element order is that of ECMA-376 Part 1, 21.2.2.226 (valAx) and 21.2.2.25 (catAx).
 */
export function polishChart(xml: string, chart: ChartOut): string {
  const axes = /<c:(valAx|catAx)>.*?<\/c:\1>/gs;
  let seen = 0;
  return xml
    .replace(MARKER_BEFORE_FORMAT, "$2$1")
    .replaceAll("<c:majorGridlines/>", `<c:majorGridlines>${hairline()}</c:majorGridlines>`)
    .replaceAll('<c:overlap val="100"/>', '<c:gapWidth val="45"/><c:overlap val="100"/>')
    .replace(axes, (axis) => polishAxis(axis, seen++ === 0 ? chart.x : chart.y));
}

/** The library writes them the wrong way round; the schema wants a series' format first (21.2.2.165, ser). */
const MARKER_BEFORE_FORMAT = /(<c:marker>(?:(?!<\/c:marker>).)*<\/c:marker>)(<c:spPr>.*?<\/c:spPr>)/gs;

function polishAxis(xml: string, axis: AxisOut): string {
  let out = xml;
  if (axis.step !== undefined) out = out.replace("</c:valAx>", `<c:majorUnit val="${axis.step}"/></c:valAx>`);
  if (axis.reversed) out = out.replace('<c:orientation val="minMax"/>', '<c:orientation val="maxMin"/>');
  return out;
}

function hairline(): string {
  return `<c:spPr><a:ln w="6350"><a:solidFill><a:srgbClr val="${INK.rule.slice(1)}"/></a:solidFill></a:ln></c:spPr>`;
}
