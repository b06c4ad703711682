import type { TableContext } from "./context";
import { correctionStops, lastQuarters } from "./trend-quarters";
import { sitesBeside, type SitesBeside } from "./trend-sites";

/** What is drawn beside the rows of the trend. */
export interface TrendOverview {
  readonly quarters: readonly QuarterStops[];
  readonly sites: readonly SitesBeside[];
}

export interface QuarterStops {
  readonly quarter: string;
  /** Children followed at its end for whom correcting stopped within it. */
  readonly correctionStops: number;
}

/** Where correcting stopped, and each site beside the others in the first and the last quarter that can be compared. */
export function trendOverview(context: TableContext): TrendOverview {
  const quarters = lastQuarters(context.asOf);
  const stops = correctionStops(context, quarters);
  return {
    quarters: quarters.map(({ label }, at) => ({ quarter: label, correctionStops: stops[at] as number })),
    sites: sitesBeside(context, quarters),
  };
}
