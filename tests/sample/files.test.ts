import { readFileSync } from "node:fs";
import { join } from "node:path";
import { strFromU8, unzipSync } from "fflate";
import { writeWorkbook } from "../../src/hosts/file/write-workbook";
import { makeSample, type Sample, type SampleOptions } from "../../src/sample/make-sample";
import { sampleSheets } from "../../src/sample/sample-sheets";

const FOLDER = join(__dirname, "../../sample-workbooks");
const settings = JSON.parse(readFileSync(join(FOLDER, "settings.json"), "utf8")) as Record<string, SampleOptions>;

const samples = Object.entries(settings).map(([file, options]): [string, Sample] => [file, makeSample(options)]);
const bytesOf = (sample: Sample): Buffer =>
  Buffer.from(writeWorkbook(sampleSheets(sample), { created: sample.endDate }));

test.each(samples)("%s is what its settings make, byte for byte", (file, sample) => {
  expect(bytesOf(sample).equals(readFileSync(join(FOLDER, file)))).toBe(true);
});

test("the truth beside the faulty workbook is the one that was planted", () => {
  const sample = makeSample(settings["alder-fork-faults.xlsx"] as SampleOptions);
  const kept = readFileSync(join(FOLDER, "alder-fork-faults.truth.json"), "utf8");
  expect(kept).toBe(`${JSON.stringify(sample.truth, null, 2)}\n`);
  expect(sample.truth.faults.length).toBeGreaterThan(60);
});

test.each(samples)("%s stays small, with six tables by name and no formula", (file) => {
  const bytes = readFileSync(join(FOLDER, file));
  expect(bytes.length).toBeLessThan(1_500_000);
  const parts = Object.entries(unzipSync(bytes));
  const text = (pattern: RegExp): string[] =>
    parts.filter(([name]) => pattern.test(name)).map(([, part]) => strFromU8(part));
  const sheets = /<sheet name="([^"]+)"/g;
  const names = [...(text(/workbook\.xml$/)[0] ?? "").matchAll(sheets)].map((match) => match[1]);
  expect(names.slice(0, 6)).toEqual(["Children", "Observations", "Skills", "Referrals", "Signs", "Ratings"]);
  expect(text(/worksheets\/sheet\d+\.xml$/).some((sheet) => /<f[ >]/.test(sheet))).toBe(false);
});

test("the README names the planted cluster and the settings", () => {
  const readme = readFileSync(join(FOLDER, "README.md"), "utf8");
  const { cluster, children, seed } = (samples[0] as [string, Sample])[1].truth;
  for (const said of [cluster.site, cluster.area, "January to March 2026", `${cluster.planted} referrals`]) {
    expect(readme).toContain(said);
  }
  expect(readme).toContain(`--children ${children} --seed ${seed}`);
});
