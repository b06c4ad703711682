import { readFileSync } from "node:fs";
import path from "node:path";
import { temporaryFolder, windowline } from "../support/windowline";

const BOOK = "sample-workbooks/alder-fork.xlsx";
const at = (name: string) => path.join(folder, name);
const folder = temporaryFolder();
const FIGURE = 'met-by-band/all/speech/"12 to <18 months"/shareMet';
const firm = (...words: string[]) => windowline(["firm", BOOK, "--as-of", "2026-09-30", ...words]);

test("the sentence, the dots, and every choice as JSON with the report's own figure first", () => {
  const { status, stdout } = firm("--figure", FIGURE, "--json", at("firm.json"));
  expect(status).toBe(0);
  expect(stdout).toMatch(/^Between \d+% and \d+% under all \d+ defensible choices; .* moves it most\.\n\n/);
  expect(stdout).toMatch(/\n *\d+% {2}●·*\n/);
  windowline(["report", BOOK, "--as-of", "2026-09-30", "--tables", "met-by-band", "--json", at("report.json")]);
  const json = (file: string) => JSON.parse(readFileSync(at(file), "utf8"));
  const columns = json("report.json").tables[0].columns.map(({ key }: { key: string }) => key);
  const row = json("report.json").tables[0].rows.find(
    (each: unknown[]) => each[0] === "all" && each[1] === "speech" && each[2] === "12 to <18 months",
  );
  const [table] = json("firm.json").tables;
  expect(table.id).toBe("definition-check");
  expect(table.columns.map(({ key }: { key: string }) => key)).toEqual(["choice", "value"]);
  expect(table.rows[0]).toEqual([
    "correctUntil 24; recheck 90; disagreement not met; met by observation; edges 12, 18",
    row[columns.indexOf("shareMet")],
  ]);
});

test.each([
  [["--figure", "trend/walk-alone/met"], /Begin the figure with one of these tables: met-by-band/],
  [["--figure", 'met-by-band/walk-alone/"12 to 18"/shareMet'], /No age group is called "12 to 18".*12 to <18 months/],
  [["--figure", FIGURE, "--by", "Color"], /no column "Color"/],
])("%j ends with 2 and one sentence", (words, message) => {
  const { status, stdout, stderr } = firm(...words);
  expect({ status, stdout }).toEqual({ status: 2, stdout: "" });
  expect(stderr).toMatch(message);
});
