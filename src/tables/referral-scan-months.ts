import { monthLabel } from "../cohort/person-time";
import { expectedCells } from "../statistics/scan";
import type { TableContext } from "./context";
import { EVERY_AREA } from "./referral-scan";
import { scannedReferrals } from "./referral-scan-input";
import type { Table } from "./table";

/** One month of a scanned place: what came, and what the program's own rates by age give. */
export interface ScannedMonth {
  readonly month: string;
  readonly observed: number;
  readonly expected: number;
}

/** Month by month, the place and area of the first window that the scan lists; none where it lists no window. */
export function mostLikelyMonths(context: TableContext, { rows: [first] }: Table): ScannedMonth[] {
  if (!first) return [];
  const [place, area] = first;
  const { input, places, areas, firstMonth } = scannedReferrals(context);
  const { shape, observed, strata } = input;
  const layer = area === EVERY_AREA ? 0 : areas.indexOf(String(area)) + 1;
  const start = (layer * shape.places + places.indexOf(String(place))) * shape.periods;
  const expected = expectedCells(shape, strata);
  return Array.from({ length: shape.periods }, (_, month) => ({
    month: monthLabel(firstMonth + month),
    observed: observed[start + month] as number,
    expected: expected[start + month] as number,
  }));
}
