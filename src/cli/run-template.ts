import { dayFromIso } from "../age/day";
import { writeWorkbook } from "../hosts/file/write-workbook";
import { templateSheets } from "../report/template/template-sheets";
import { EXIT } from "./failure";
import { checkOutputs, writeWhole } from "./files";
import type { RequestOf } from "./request";
import { print } from "./say";

/** A template bears no date of its own: the same bytes each time. */
const CREATED = dayFromIso("2026-01-01") as number;

export function runTemplateCommand({ out }: RequestOf<"template">): number {
  checkOutputs([], [out]);
  writeWhole(out, writeWorkbook(templateSheets(), { created: CREATED }));
  print(`Written: ${out}. Its first sheet says how to keep records; each table has one example row to type over.`);
  return EXIT.done;
}
