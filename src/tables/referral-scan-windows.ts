import type { ScannedWindow } from "../statistics/scan";

/**
 * The most likely windows that share no referral: a window is left out where one above it has the same place, a month of
 * it, and the same area or every area (layer 0).
 */
export function apart(windows: readonly ScannedWindow[], most: number): ScannedWindow[] {
  const kept: ScannedWindow[] = [];
  for (const window of windows) {
    if (kept.length >= most) break;
    if (!kept.some((above) => canShare(above, window))) kept.push(window);
  }
  return kept;
}

function canShare(a: ScannedWindow, b: ScannedWindow): boolean {
  const sameArea = a.layer === b.layer || a.layer === 0 || b.layer === 0;
  return sameArea && a.place === b.place && a.first <= b.last && b.first <= a.last;
}
