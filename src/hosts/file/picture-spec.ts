import type { TopLevelSpec } from "vega-lite";
import { linesIn } from "../../report/sheets/text-width";
import type { Picture } from "../../report/release/pictures";
import { INK } from "../../workbook/ink";

/** The font that lies beside the tool; elsewhere the nearest that a machine has. */
export const PICTURE_FONT = "Source Sans 3";

/** A picture as a Vega-Lite specification: panels of lying bars, each with its numbers in words beside it. */
export function pictureSpec({ title, below, axis, end, panels }: Picture): TopLevelSpec {
  const lastDrawn = panels.findLastIndex(({ bars }) => bars.length > 0);
  return {
    $schema: "https://vega.github.io/schema/vega-lite/v6.json",
    background: INK.paper,
    padding: 16,
    title: {
      text: linesOf(title, TITLE_DIGITS),
      subtitle: below.flatMap((line) => linesOf(line, LINE_DIGITS)),
      ...HEAD,
    },
    vconcat: panels.flatMap((panel, index) => [
      ...(panel.bars.length === 0 ? [] : [drawnPanel(panel, end, index === lastDrawn ? axis : null)]),
      ...heldBackLines(panel),
    ]),
    spacing: 10,
    config: CONFIG,
  } as unknown as TopLevelSpec;
}

function drawnPanel({ title, bars }: Picture["panels"][number], end: number, axis: string | null): object {
  return {
    title: title === "" ? undefined : { text: title, ...PANEL_TITLE },
    width: PLOT_WIDTH,
    height: { step: 22 },
    data: { values: bars.map((bar) => ({ ...bar, start: 0, end })) },
    layer: layers(
      bars.map(({ label }) => label),
      end,
      axis,
    ),
  };
}

/** One line of words for all that a panel holds back. */
function heldBackLines({ title, bars, heldBack }: Picture["panels"][number]): object[] {
  if (heldBack === "") return [];
  const text = bars.length === 0 && title !== "" ? `${title}. ${heldBack}` : heldBack;
  const lines = linesOf(text, LINE_DIGITS);
  return [
    {
      width: PLOT_WIDTH,
      height: 15 * lines.length,
      data: { values: [{}] },
      mark: {
        type: "text",
        align: "left",
        baseline: "top",
        fontSize: 12,
        fontStyle: "italic",
        fill: INK.quiet,
        text: lines,
        lineHeight: 15,
        x: 0,
        y: 0,
      },
      encoding: {},
    },
  ];
}

/** A date is never broken between two lines: a piece of it would read as another date. */
function linesOf(text: string, digits: number): string[] {
  const glued = text.replace(/\b(\d{1,2}) ([A-Z][a-z]+) (\d{4})\b|\b([A-Z][a-z]+) (\d{1,2}), (\d{4})\b/g, (date) =>
    date.replaceAll(" ", "\u00a0"),
  );
  return linesIn(glued, digits).map((line) => line.replaceAll("\u00a0", " "));
}

const TITLE_DIGITS = 72;
const PLOT_WIDTH = 420;
const LINE_DIGITS = 100;
const HEAD = {
  anchor: "start",
  frame: "bounds",
  fontSize: 17,
  subtitleFontSize: 12,
  subtitleColor: INK.quiet,
  offset: 14,
  color: INK.text,
  subtitlePadding: 5,
  subtitleLineHeight: 15,
};
const PANEL_TITLE = { anchor: "start", frame: "group", fontSize: 13, color: INK.text, offset: 4 };
const CONFIG = {
  font: `${PICTURE_FONT}, sans-serif`,
  aria: false,
  view: { stroke: null },
  axis: {
    labelFontSize: 12,
    titleFontSize: 12,
    labelColor: INK.text,
    titleColor: INK.quiet,
    titleFontWeight: "normal",
    gridColor: INK.rule,
    domainColor: INK.quiet,
    tickColor: INK.quiet,
  },
};

function layers(labels: readonly string[], end: number, axis: string | null): object[] {
  const x = {
    type: "quantitative",
    scale: { domain: [0, end], nice: false },
    axis: { title: axis, tickCount: 5, format: ",~f", labels: axis !== null, ticks: axis !== null },
  };
  const y = {
    field: "label",
    type: "nominal",
    sort: labels,
    axis: { title: null, grid: false, labelLimit: 360, labelPadding: 6, ticks: false },
  };
  const only = (state: string) => [{ filter: `datum.state === '${state}'` }];
  const bar = { type: "bar", height: { band: 0.66 }, stroke: INK.quiet, strokeWidth: 0.75 };
  return [
    { mark: { type: "point", opacity: 0, size: 1 }, encoding: { y, x: { ...x, field: "start" } } },
    { transform: only("shown"), mark: { ...bar, fill: INK.accent }, encoding: { y, x: { ...x, field: "to" } } },
    {
      transform: only("range"),
      mark: { ...bar, fill: INK.pale },
      encoding: { y, x: { ...x, field: "from" }, x2: { field: "to" } },
    },
    {
      transform: [{ filter: "datum.lower !== null" }],
      mark: { type: "rule", stroke: INK.paper, strokeWidth: 4.5 },
      encoding: { y, x: { ...x, field: "lower" }, x2: { field: "upper" } },
    },
    {
      transform: [{ filter: "datum.lower !== null" }],
      mark: { type: "rule", stroke: INK.text, strokeWidth: 1.75 },
      encoding: { y, x: { ...x, field: "lower" }, x2: { field: "upper" } },
    },
    {
      mark: { type: "text", align: "left", dx: 8, fontSize: 12, fill: INK.text },
      encoding: { y, x: { ...x, field: "end" }, text: { field: "words", type: "nominal" } },
    },
  ];
}
