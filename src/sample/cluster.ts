import { isoOf } from "../age/day";
import type { SpanOfRecords } from "./children";
import { CLUSTER } from "./program";
import { monthsOf, type SampleReferral } from "./referrals";

/** The one true cluster: far more referrals of one area at one site in these months than at other times. */
export interface PlantedCluster {
  readonly site: string;
  readonly area: string;
  /** `2026-01` */
  readonly firstMonth: string;
  readonly lastMonth: string;
  /** Referrals that the plant made. */
  readonly planted: number;
}

export function clusterOf(referrals: readonly SampleReferral[], span: SpanOfRecords): PlantedCluster {
  const months = monthsOf(span);
  const name = (back: number): string => isoOf(months[months.length - 1 - back]?.first ?? span.first).slice(0, 7);
  return {
    site: CLUSTER.site,
    area: CLUSTER.area,
    firstMonth: name(CLUSTER.firstMonthsBack),
    lastMonth: name(CLUSTER.lastMonthsBack),
    planted: referrals.filter((referral) => referral.planted).length,
  };
}
