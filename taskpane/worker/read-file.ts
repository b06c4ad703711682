import { readWorkbook, UnreadableWorkbook } from "../../src/hosts/file/read-workbook";
import type { WorkbookIn } from "../../src/workbook/workbook";
import { Refused } from "./refused";

/** A file that the user chose, as a workbook. @throws {Refused} with what to do, where it is none */
export async function readFile(bytes: Uint8Array): Promise<WorkbookIn> {
  try {
    return await readWorkbook(bytes);
  } catch (error) {
    if (error instanceof UnreadableWorkbook) throw new Refused(`The file cannot be read: ${error.message}`);
    throw error;
  }
}
