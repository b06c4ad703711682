import type { Solver } from "../../src/release/linear-model";
import { readRecords } from "../../src/records/read-records";
import { prepareRelease } from "../../src/report/prepare-release";
import { parseSettings } from "../../src/settings/settings";
import { RELEASE_EDGES, releaseWorkbook } from "./program";

/** What became of the release, and how long it took. */
export interface PreparedIn {
  readonly ms: number;
  readonly counts: number;
  readonly hidden: number;
  readonly attacked: number;
  readonly witnesses: number;
  readonly loss: number;
  readonly bound: number;
  readonly stoppedEarly: boolean;
  readonly steps: number;
}

/** From the records to the protected and attacked release. @param mostMs - after this the search for a better pattern ends */
export function prepareTimed(
  solver: Solver,
  mostMs: number,
  now: () => number,
  onStep: (step: string) => void,
): PreparedIn {
  const workbook = releaseWorkbook();
  const parsed = parseSettings({ asOf: "2026-09-30", edges: RELEASE_EDGES, by: ["Site"] }, 1900);
  if ("messages" in parsed) throw new Error(parsed.messages.join(" "));
  const began = now();
  let steps = 0;
  const found = prepareRelease(readRecords(workbook, parsed.settings, []), {
    settings: parsed.settings,
    tables: ["met-by-band"],
    ledger: { entries: [] },
    solver,
    onStep: (step) => {
      steps += 1;
      onStep(step);
    },
    isTimeUp: () => now() - began > mostMs,
  });
  if (!("protection" in found)) throw new Error(`refused: ${found.proposals.join(" ")}`);
  const { counts, hidden, loss, bound, stoppedEarly } = found.protection;
  return { ms: now() - began, counts, hidden, ...found.attack, loss, bound, stoppedEarly, steps };
}
