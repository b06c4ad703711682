import { writeWorkbook } from "../hosts/file/write-workbook";
import { makeSample } from "../sample/make-sample";
import { sampleSheets } from "../sample/sample-sheets";
import { badRequest, EXIT } from "./failure";
import { checkOutputs, writeWhole } from "./files";
import type { RequestOf } from "./request";
import { print } from "./say";

const MOST_CHILDREN = 20_000;

export function runSampleCommand({ children, seed, out, defects, truth }: RequestOf<"sample">): number {
  if (children < 1 || children > MOST_CHILDREN) throw badRequest(`--children takes 1 to ${MOST_CHILDREN}.`);
  checkOutputs([], truth ? [out, truth] : [out]);
  const sample = makeSample({ children, seed, defects });
  writeWhole(out, writeWorkbook(sampleSheets(sample), { created: sample.endDate }));
  if (truth) writeWhole(truth, `${JSON.stringify(sample.truth, null, 2)}\n`);
  print([`Written: ${out}`, ...(truth ? [`Written: ${truth}`] : []), "Every child in it is invented."].join("\n"));
  return EXIT.done;
}
