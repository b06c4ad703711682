/// <reference types="office-js" />
import type { HostFailure } from "../../workbook/host";
import { EDITING, richCode } from "./failures";

/** Why Excel takes no request for now, and how long that is worth waiting for. */
export interface Hold {
  readonly kind: HostFailure["kind"];
  readonly sentence: string;
  readonly mostRetries: number;
  /** How many times as long as the first wait this one is. */
  readonly growth: (attempt: number) => number;
}

const steady = () => 1;
const doubling = (attempt: number) => Math.min(16, 2 ** attempt);

const EDITED: Hold = { kind: "editing a cell", sentence: EDITING, mostRetries: Infinity, growth: steady };

const BEHIND: Hold = {
  kind: "behind another workbook",
  sentence:
    "Excel waits until this workbook is in front again. Go back to the window of the workbook with your records, and it continues by itself.",
  mostRetries: Infinity,
  growth: steady,
};

/** Half a second at first, then up to eight: forty seconds in all. */
const BUSY: Hold = {
  kind: "busy",
  sentence: "Excel is busy. Wait until it has finished calculating or saving, then try again.",
  mostRetries: 8,
  growth: doubling,
};

/** Source of the codes: Microsoft, "Error handling with the application-specific JavaScript APIs". */
const HOLDS: Readonly<Record<string, Hold>> = {
  InvalidOperationInCellEditMode: EDITED,
  InactiveWorkbook: BEHIND,
  InvalidSelection: BEHIND,
  ActivityLimitReached: BUSY,
  Conflict: BUSY,
  RequestAborted: BUSY,
  ServiceNotAvailable: BUSY,
};

/** Null for an error that no waiting mends. */
export async function holdOf(error: unknown): Promise<Hold | null> {
  const code = richCode(error) ?? "";
  if (code === "GeneralException") return (await isBehind()) ? BEHIND : null;
  return Object.hasOwn(HOLDS, code) ? (HOLDS[code] as Hold) : null;
}

/**
 * Some members answer GeneralException while another workbook is in front (OfficeDev/office-js#771). The active
 * cell tells the two apart: it then cannot be asked for (OfficeDev/office-js#5319).
 */
async function isBehind(): Promise<boolean> {
  try {
    await Excel.run(async (context) => {
      context.workbook.getActiveCell().load("rowIndex");
      await context.sync();
    });
    return false;
  } catch (error) {
    return HOLDS[richCode(error) ?? ""] === BEHIND;
  }
}
