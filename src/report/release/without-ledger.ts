import type { PreparedRelease } from "../../release/prepared";

/** Said in the release too: whoever receives it must not take it for protected against what it was not. */
export function withoutLedger(release: PreparedRelease): PreparedRelease {
  return { ...release, notCovered: [NO_LEDGER, ...release.notCovered] };
}

const NO_LEDGER = "Earlier releases: no release log was given, so none was checked.";
