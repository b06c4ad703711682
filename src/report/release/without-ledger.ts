import type { PreparedRelease } from "../../release/prepared";

/** A release for which no ledger was given says so in what it does not cover. */
export function withoutLedger(release: PreparedRelease): PreparedRelease {
  return { ...release, notCovered: [NO_LEDGER, ...release.notCovered] };
}

const NO_LEDGER = "Earlier releases: no ledger of them was given, so that none was looked at.";
