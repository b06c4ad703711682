import { buildCohort } from "../../src/cohort/cohort";
import { readRecords } from "../../src/records/read-records";
import { makeSample } from "../../src/sample/make-sample";
import { parseSettings } from "../../src/settings/settings";
import { type TableContext, tableContext } from "../../src/tables/context";
import { sampleSheets } from "../../src/sample/sample-sheets";
import { asRead } from "../sample/as-read";

/** The invented program drawn with a seed, as the tables see it, and the cluster that was planted in it. */
export function sampleContext(seed: number, children = 240) {
  const sample = makeSample({ children, seed });
  const parsed = parseSettings({ asOf: sample.truth.endDate }, 1900);
  if ("messages" in parsed) throw new Error(parsed.messages.join(" "));
  const records = readRecords(asRead(sampleSheets(sample)), parsed.settings);
  const context: TableContext = tableContext(buildCohort(records, parsed.settings), parsed.settings, records);
  return { context, cluster: sample.truth.cluster };
}
