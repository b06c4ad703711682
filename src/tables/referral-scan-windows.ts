import type { ScannedWindow } from "../statistics/scan";
import type { ScannedReferral } from "./referral-scan-input";

/** A window with the referrals in it. */
export interface ListedWindow<Window> {
  readonly window: Window;
  readonly rows: readonly ScannedReferral[];
}

type Place = Pick<ScannedWindow, "layer" | "place" | "first" | "last">;

/** The most likely windows of which none holds a referral of one above it, whatever area it is listed under. */
export function apart<Window extends Place>(
  windows: readonly Window[],
  referrals: readonly ScannedReferral[],
  most: number,
): ListedWindow<Window>[] {
  const listed: ListedWindow<Window>[] = [];
  const taken = new Set<ScannedReferral>();
  for (const window of windows) {
    if (listed.length >= most) break;
    const rows = referrals.filter((referral) => isIn(window, referral));
    if (rows.some((row) => taken.has(row))) continue;
    listed.push({ window, rows });
    rows.forEach((row) => taken.add(row));
  }
  return listed;
}

function isIn({ layer, place, first, last }: Place, referral: ScannedReferral): boolean {
  return (
    referral.place === place && referral.month >= first && referral.month <= last && referral.layers.includes(layer)
  );
}
