import { excelReady } from "../../../src/hosts/excel/ready";
import { startOffice } from "../../office/in-node";
import { MANIFEST_SETS } from "../../office/rich-client";
import { failureOf } from "./support";

beforeAll(() => startOffice({ ...MANIFEST_SETS, excelapi: "1.11" }));

test("an Excel that is too old is told so in a sentence", async () => {
  const failure = await failureOf(excelReady());
  expect(failure).toEqual({ kind: "not supported", message: expect.stringContaining("Update Excel") });
});
