import { readFileSync } from "node:fs";
import { buildCohort } from "../src/cohort/cohort";
import { countLooks } from "../src/cohort/looks-by-band";
import { nodeInflate } from "../src/hosts/file/node-inflate";
import { readWorkbook } from "../src/hosts/file/read-workbook";
import { readRecords } from "../src/records/read-records";
import { parseSettings } from "../src/settings/settings";
import { EDGES } from "./observations";

export interface Counted {
  readonly looks: readonly number[];
}

/** From the file to the counts, with every check that the program makes of its records. */
export async function countFile(file: string): Promise<Counted> {
  const parsed = parseSettings({ asOf: "2027-12-31" }, 1900);
  if (!("settings" in parsed)) throw new Error(parsed.messages.join("\n"));
  const workbook = await readWorkbook(readFileSync(file), { inflate: nodeInflate });
  const records = readRecords(workbook, parsed.settings);
  return { looks: [...countLooks(buildCohort(records, parsed.settings), EDGES).looks] };
}
