import type { TableContext } from "./context";
import { correctionStops, lastQuarters } from "./trend-quarters";
import { standardisedByArea } from "./trend-sites";

/** What is drawn beside the rows of the trend. */
export interface TrendOverview {
  readonly quarters: readonly QuarterStops[];
  readonly areas: readonly StandardisedArea[];
}

export interface QuarterStops {
  readonly quarter: string;
  /** Children followed at its end for whom correcting stopped within it. */
  readonly correctionStops: number;
}

export interface StandardisedArea {
  readonly area: string;
  /** Of each quarter, the share met standardised over sites; null where a site has nobody assessed. */
  readonly shares: readonly (number | null)[];
}

/** Where correcting stopped, and the shares of sites put together as if children came from them alike in every quarter. */
export function trendOverview(context: TableContext): TrendOverview {
  const quarters = lastQuarters(context.asOf);
  const stops = correctionStops(context, quarters);
  return {
    quarters: quarters.map(({ label }, at) => ({ quarter: label, correctionStops: stops[at] as number })),
    areas: [...standardisedByArea(context, quarters)].map(([area, shares]) => ({ area, shares })),
  };
}
