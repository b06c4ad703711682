import { numberArgument, objectArgument, textArgument } from "../protocol/arguments";
import { invalidArgument } from "../protocol/rich-error";
import { Ref, serverType } from "../protocol/server-type";
import type { MemoryChart, MemorySeries, MemorySheet, Properties } from "../workbook/memory-sheet";
import type { MemoryWorkbook } from "../workbook/memory-workbook";
import type { MemoryRange } from "./memory-range";
import { between, type Check, isBoolean, isColour, isNumber, isText, keptProperties, oneOf } from "./set-properties";

const CHART_TYPES = ["ColumnStacked", "ColumnStacked100", "BarStacked", "BarStacked100", "Line", "XYScatterLines"];

interface Bag {
  readonly properties: Properties;
  readonly path: string;
}

/** A part of a chart that only keeps what it is told. */
const part = (
  name: string,
  checks: Readonly<Record<string, Check>>,
  parts: Readonly<Record<string, () => ReturnType<typeof serverType>>> = {},
  methods: Readonly<Record<string, (bag: Bag, args: readonly unknown[]) => void>> = {},
) =>
  serverType<Bag>(name, {
    scalars: keptProperties<Bag>(name, checks, ({ properties, path }, property, value) =>
      properties.set(`${path}${property}`, value),
    ),
    objects: Object.fromEntries(
      Object.entries(parts).map(([each, type]) => [each, (bag: Bag) => new Ref(type(), below(bag, each))]),
    ),
    methods,
  });

function below({ properties, path }: Bag, name: string): Bag {
  return { properties, path: `${path}${name}.` };
}

const DASHES = [
  "None",
  "Continuous",
  "Dash",
  "Dot",
  "DashDot",
  "DashDotDot",
  "Grey25",
  "Grey50",
  "RoundDot",
  "Automatic",
];
const font = part("ChartFont", { Bold: isBoolean, Size: between(1, 409), Color: isColour });
const line = part("ChartLineFormat", { Color: isColour, Weight: isNumber, LineStyle: oneOf(...DASHES) });
const fill = part(
  "ChartFill",
  {},
  {},
  {
    SetSolidColor: ({ properties, path }, [colour]) => {
      if (!isColour(colour)) throw invalidArgument("ChartFill.SetSolidColor");
      properties.set(`${path}SolidColor`, colour);
    },
  },
);
const lettered = (name: string) => () => part(name, {}, { Font: () => font });
const titled = (name: string, format: string) =>
  part(name, { Text: isText, Visible: isBoolean }, { Format: lettered(format) });
const gridlines = part(
  "ChartGridlines",
  { Visible: isBoolean },
  { Format: () => part("ChartGridlinesFormat", {}, { Line: () => line }) },
);
const axis = part(
  "ChartAxis",
  {
    Minimum: isNumber,
    Maximum: isNumber,
    MajorUnit: isNumber,
    TickLabelSpacing: isNumber,
    TickLabelPosition: oneOf("None", "NextToAxis", "High", "Low"),
    NumberFormat: isText,
    ReversePlotOrder: isBoolean,
    Visible: isBoolean,
  },
  {
    Title: () => titled("ChartAxisTitle", "ChartAxisTitleFormat"),
    Format: lettered("ChartAxisFormat"),
    MajorGridlines: () => gridlines,
  },
);
const title = titled("ChartTitle", "ChartTitleFormat");
const axes = part("ChartAxes", {}, { CategoryAxis: () => axis, ValueAxis: () => axis });
const legend = part(
  "ChartLegend",
  { Visible: isBoolean, Position: oneOf("Bottom", "Right") },
  { Format: lettered("ChartLegendFormat") },
);
const dataLabels = part(
  "ChartDataLabels",
  {
    ShowSeriesName: isBoolean,
    ShowValue: isBoolean,
    Position: oneOf("Top", "Bottom", "Left", "Right", "Center"),
  },
  { Format: lettered("ChartDataLabelFormat") },
);
const seriesFormat = part("ChartSeriesFormat", {}, { Fill: () => fill, Line: () => line });

const seriesType = serverType<MemorySeries>("ChartSeries", {
  scalars: {
    Name: {
      get: (series) => series.name,
      set: (series, value) => (series.name = textArgument(value, "ChartSeries.Name")),
    },
    ...keptProperties<MemorySeries>(
      "ChartSeries",
      {
        GapWidth: between(0, 500),
        ChartType: oneOf(...CHART_TYPES),
        HasDataLabels: isBoolean,
        MarkerStyle: oneOf("None", "Diamond", "Circle", "Square", "Triangle", "Dash", "Automatic"),
        MarkerSize: between(2, 72),
        MarkerBackgroundColor: isColour,
        MarkerForegroundColor: isColour,
        Smooth: isBoolean,
      },
      ({ properties }, property, value) => properties.set(property, value),
    ),
  },
  objects: {
    Format: ({ properties }) => new Ref(seriesFormat, { properties, path: "Format." }),
    DataLabels: ({ properties }) => new Ref(dataLabels, { properties, path: "DataLabels." }),
  },
  methods: {
    SetValues: (series, [range]) => {
      series.values = objectArgument<MemoryRange>(range, "Range", "ChartSeries.SetValues");
    },
    SetXAxisValues: (series, [range]) => {
      series.xValues = objectArgument<MemoryRange>(range, "Range", "ChartSeries.SetXAxisValues");
    },
  },
});

const seriesCollectionType = serverType<MemoryChart>("ChartSeriesCollection", {
  items: ({ series }) => series.map((each) => new Ref(seriesType, each)),
  methods: {
    GetItemAt: ({ series }, [index]) => {
      const found = series[numberArgument(index, "ChartSeriesCollection.GetItemAt")];
      if (!found) throw invalidArgument("ChartSeriesCollection.GetItemAt");
      return new Ref(seriesType, found);
    },
    Add: ({ series }, [name]) => {
      const [first] = series;
      if (!first) throw invalidArgument("ChartSeriesCollection.Add");
      const added: MemorySeries = {
        name: textArgument(name, "ChartSeriesCollection.Add"),
        values: first.values,
        properties: new Map(),
      };
      series.push(added);
      return new Ref(seriesType, added);
    },
  },
});

interface ChartOnSheet {
  readonly sheet: MemorySheet;
  readonly chart: MemoryChart;
}

const chartType = serverType<ChartOnSheet>("Chart", {
  id: ({ chart }) => chart.id,
  scalars: {
    ...keptProperties<ChartOnSheet>(
      "Chart",
      { Left: isNumber, Top: isNumber, Width: isNumber, Height: isNumber },
      ({ chart }, property, value) => chart.properties.set(property, value),
    ),
    Name: { get: ({ chart }) => chart.id },
  },
  objects: {
    Title: ({ chart: { properties } }) => new Ref(title, { properties, path: "Title." }),
    Axes: ({ chart: { properties } }) => new Ref(axes, { properties, path: "" }),
    Legend: ({ chart: { properties } }) => new Ref(legend, { properties, path: "Legend." }),
    Series: ({ chart }) => new Ref(seriesCollectionType, chart),
  },
  methods: {
    SetPosition: ({ chart: { properties } }, [start]) => {
      const { area } = objectArgument<MemoryRange>(start, "Range", "Chart.SetPosition");
      properties.set("At", { row: area.top, column: area.left });
    },
    Delete: ({ sheet, chart }) => void sheet.charts.splice(sheet.charts.indexOf(chart), 1),
  },
});

export interface SheetOfWorkbook {
  readonly workbook: MemoryWorkbook;
  readonly sheet: MemorySheet;
}

export const chartCollectionType = serverType<SheetOfWorkbook>("ChartCollection", {
  items: ({ sheet }) => sheet.charts.map((chart) => new Ref(chartType, { sheet, chart })),
  item: ({ sheet }, key) => {
    const found = sheet.charts.find((each) => each.id === key);
    return found ? new Ref(chartType, { sheet, chart: found }) : null;
  },
  methods: {
    Add: ({ workbook, sheet }, [type, source, seriesBy]) => {
      const { area, sheet: from } = objectArgument<MemoryRange>(source, "Range", "ChartCollection.Add");
      if (typeof type !== "string" || !CHART_TYPES.includes(type)) throw invalidArgument("ChartCollection.Add");
      const by = seriesBy === "Rows" ? area.bottom - area.top : area.right - area.left;
      const series = Array.from({ length: by + 1 }, (_, index) => ({
        name: `Series${index + 1}`,
        values: { sheet: from, area },
        properties: new Map<string, unknown>(),
      }));
      const chart: MemoryChart = { id: workbook.nextId("CHART"), type, series, properties: new Map() };
      sheet.charts.push(chart);
      return new Ref(chartType, { sheet, chart });
    },
  },
});
