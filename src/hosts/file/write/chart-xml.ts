import { INK } from "../../../workbook/ink";
import { markOf } from "../../../workbook/series-looks";
import type { AxisOut, ChartOut, SeriesOut } from "../../../workbook/sheets";

/**
 * What the writing library has no call for, gets wrong, or leaves to defaults that programs do not agree on (straight or
 * smoothed lines, marks on axes, blanks): all of it is said outright. Element order is that of ECMA-376 Part 1, 21.2.2.
 */
export function polishChart(xml: string, chart: ChartOut): string {
  const axes = /<c:(valAx|catAx)>.*?<\/c:\1>/gs;
  let seen = 0;
  const said = SAID_OUTRIGHT.reduce((text, [pattern, outright]) => text.replace(pattern, outright), xml);
  return withShortLegend(withMarks(said, chart.series), chart.series).replace(axes, (axis) =>
    polishAxis(axis, seen++ === 0 ? chart.x : chart.y),
  );
}

const HAIRLINE = `<c:spPr><a:ln w="6350"><a:solidFill><a:srgbClr val="${INK.rule.slice(1)}"/></a:solidFill></a:ln></c:spPr>`;

const NAME_ALONE = ["LegendKey", "Val", "CatName", "SerName", "Percent", "BubbleSize"]
  .map((part) => `<c:show${part} val="${part === "SerName" ? 1 : 0}"/>`)
  .join("");

const SAID_OUTRIGHT: readonly (readonly [pattern: RegExp, outright: string])[] = [
  // The library writes a series' marker before its format; the schema wants it the other way round (21.2.2.165, ser).
  [/(<c:marker>(?:(?!<\/c:marker>).)*<\/c:marker>)(<c:spPr>.*?<\/c:spPr>)/gs, "$2$1"],
  [/<c:majorGridlines\/>/g, `<c:majorGridlines>${HAIRLINE}</c:majorGridlines>`],
  [/<c:overlap val="100"\/>/g, '<c:gapWidth val="45"/><c:overlap val="100"/>'],
  [/(<c:lang [^>]*\/>)/, '$1<c:roundedCorners val="0"/>'],
  [/<c:layout\/><\/c:title>/g, '<c:layout/><c:overlay val="0"/></c:title>'],
  [/<\/c:title><c:plotArea>/, '</c:title><c:autoTitleDeleted val="0"/><c:plotArea>'],
  [/(<c:(?:scatterStyle|grouping) [^>]*\/>)/g, '$1<c:varyColors val="0"/>'],
  // What a label does not show has to be said too: programs take it for shown.
  [/<c:showVal val="1"\/><c:showSerName val="1"\/>/g, NAME_ALONE],
  [/<\/c:yVal><\/c:ser>/g, '</c:yVal><c:smooth val="0"/></c:ser>'],
  [/(<c:legendPos [^>]*\/><c:layout\/>)/, '$1<c:overlay val="0"/>'],
  [/<c:plotVisOnly val="1"\/>/, '<c:plotVisOnly val="1"/><c:dispBlanksAs val="gap"/>'],
];

/** The library leaves the marks of a line chart out. */
function withMarks(xml: string, series: readonly SeriesOut[]): string {
  let seen = 0;
  return xml.replace(/<c:ser>.*?<\/c:ser>/gs, (each) => {
    const look = series[seen++]?.look;
    const mark = look && markOf(look);
    if (!mark) return each;
    const fill = `<a:solidFill><a:srgbClr val="${INK[mark.ink].slice(1)}"/></a:solidFill>`;
    const outline = `<a:ln w="9525"><a:solidFill><a:srgbClr val="${INK.quiet.slice(1)}"/></a:solidFill></a:ln>`;
    return each.replace(
      NO_MARK,
      `<c:marker><c:symbol val="${mark.shape}"/><c:size val="${mark.size}"/><c:spPr>${fill}${outline}</c:spPr></c:marker>`,
    );
  });
}

/** What goes on where another series breaks off is told once. */
function withShortLegend(xml: string, series: readonly SeriesOut[]): string {
  const entries = series.map(({ continues }, at) =>
    continues ? `<c:legendEntry><c:idx val="${at}"/><c:delete val="1"/></c:legendEntry>` : "",
  );
  return xml.replace(/<c:legendPos [^>]*\/>/, (place) => place + entries.join(""));
}

const NO_MARK = '<c:marker><c:symbol val="none"/></c:marker>';

function polishAxis(xml: string, axis: AxisOut): string {
  let out = xml
    .replace("</c:scaling>", `</c:scaling><c:delete val="${axis.hidden ? 1 : 0}"/>`)
    .replace("<c:tickLblPos", '<c:majorTickMark val="out"/><c:minorTickMark val="none"/><c:tickLblPos');
  if (axis.hidden) out = out.replace(/<c:majorGridlines>.*?<\/c:majorGridlines>/s, "");
  if (axis.step !== undefined) out = out.replace("</c:valAx>", `<c:majorUnit val="${axis.step}"/></c:valAx>`);
  if (axis.labelEvery === 0) out = out.replace(/<c:tickLblPos [^>]*\/>/, '<c:tickLblPos val="none"/>');
  else if (axis.labelEvery !== undefined)
    out = out.replace("<c:noMultiLvlLbl", `<c:tickLblSkip val="${axis.labelEvery}"/><c:noMultiLvlLbl`);
  // Left alone, programs turn labels on their side where they could leave some out.
  if (xml.startsWith("<c:catAx")) out = out.replace("<a:bodyPr", '<a:bodyPr rot="0" vert="horz"');
  if (axis.reversed) out = out.replace('<c:orientation val="minMax"/>', '<c:orientation val="maxMin"/>');
  return out;
}
