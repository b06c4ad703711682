import { INK } from "../../../workbook/ink";
import type { AxisOut, ChartOut } from "../../../workbook/sheets";

/**
 * What the writing library has no call for, gets wrong, or leaves to defaults that programs do not agree on (straight or
 * smoothed lines, marks on axes, blanks): all of it is said outright. Element order is that of ECMA-376 Part 1, 21.2.2.
 */
export function polishChart(xml: string, chart: ChartOut): string {
  const axes = /<c:(valAx|catAx)>.*?<\/c:\1>/gs;
  let seen = 0;
  const said = SAID_OUTRIGHT.reduce((text, [pattern, outright]) => text.replace(pattern, outright), xml);
  return said.replace(axes, (axis) => polishAxis(axis, seen++ === 0 ? chart.x : chart.y));
}

const HAIRLINE = `<c:spPr><a:ln w="6350"><a:solidFill><a:srgbClr val="${INK.rule.slice(1)}"/></a:solidFill></a:ln></c:spPr>`;

const SAID_OUTRIGHT: readonly (readonly [pattern: RegExp, outright: string])[] = [
  // The library writes a series' marker before its format; the schema wants it the other way round (21.2.2.165, ser).
  [/(<c:marker>(?:(?!<\/c:marker>).)*<\/c:marker>)(<c:spPr>.*?<\/c:spPr>)/gs, "$2$1"],
  [/<c:majorGridlines\/>/g, `<c:majorGridlines>${HAIRLINE}</c:majorGridlines>`],
  [/<c:overlap val="100"\/>/g, '<c:gapWidth val="45"/><c:overlap val="100"/>'],
  [/(<c:lang [^>]*\/>)/, '$1<c:roundedCorners val="0"/>'],
  [/<c:layout\/><\/c:title>/g, '<c:layout/><c:overlay val="0"/></c:title>'],
  [/<\/c:title><c:plotArea>/, '</c:title><c:autoTitleDeleted val="0"/><c:plotArea>'],
  [/(<c:(?:scatterStyle|grouping) [^>]*\/>)/g, '$1<c:varyColors val="0"/>'],
  [/<\/c:yVal><\/c:ser>/g, '</c:yVal><c:smooth val="0"/></c:ser>'],
  [/(<c:legendPos [^>]*\/><c:layout\/>)/, '$1<c:overlay val="0"/>'],
  [/<c:plotVisOnly val="1"\/>/, '<c:plotVisOnly val="1"/><c:dispBlanksAs val="gap"/>'],
];

function polishAxis(xml: string, axis: AxisOut): string {
  let out = xml
    .replace("</c:scaling>", '</c:scaling><c:delete val="0"/>')
    .replace("<c:tickLblPos", '<c:majorTickMark val="out"/><c:minorTickMark val="none"/><c:tickLblPos');
  if (axis.step !== undefined) out = out.replace("</c:valAx>", `<c:majorUnit val="${axis.step}"/></c:valAx>`);
  if (axis.reversed) out = out.replace('<c:orientation val="minMax"/>', '<c:orientation val="maxMin"/>');
  return out;
}
