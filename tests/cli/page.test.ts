import { execFileSync } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";
import path from "node:path";
import ExcelJS from "exceljs";
import { CommandFailure } from "../../src/cli/failure";
import { main } from "../../src/cli/main";
import { parseWords } from "../../src/cli/program";
import { componentTest, withAllConverted } from "../support/component";
import { BOOK, temporaryFolder } from "../support/windowline";

const folder = temporaryFolder();
const at = (name: string) => path.join(folder, name);

/** Runs the command line in this process, and keeps what it says. */
function page(...words: string[]) {
  return spoken(["page", BOOK, "--as-of", "2026-09-30", ...words]);
}

async function spoken(words: readonly string[]) {
  const said = { stdout: "", stderr: "" };
  const spies = (["stdout", "stderr"] as const).map((stream) =>
    jest.spyOn(process[stream], "write").mockImplementation((text) => {
      said[stream] += String(text);
      return true;
    }),
  );
  try {
    return { status: await main(words), ...said };
  } finally {
    spies.forEach((spy) => spy.mockRestore());
  }
}

test("the words of a page", () => {
  const words = ["page", "b.xlsx", "--as-of", "2026-09-30", "--child", "A", "--out", "p.xlsx", "--correct-until", "36"];
  expect(parseWords(words, () => undefined)).toEqual({
    kind: "page",
    books: ["b.xlsx"],
    out: "p.xlsx",
    child: "A",
    therapist: null,
    visits: 12,
    understanding: null,
    decisions: null,
    settings: { asOf: "2026-09-30", correctUntil: "36" },
  });
  expect(parseWords([...words, "--visits", "3"], () => undefined)).toMatchObject({ visits: 3 });
  expect(() => parseWords([...words, "--visits", "0"], () => undefined)).toThrow(/whole number from 1 to 120/);
  expect(() => parseWords(["page", "b.xlsx", "--child", "A"], () => undefined)).toThrow(CommandFailure);
  expect(() => parseWords(["page", "b.xlsx", "--child", "A"], () => undefined)).toThrow(/--out/);
});

test("writes one sheet, the same bytes each time, and says no id", async () => {
  const first = await page("--child", "AF-0089", "--out", at("a.xlsx"));
  const second = await page("--child", " af-0089", "--out", at("b.xlsx"));
  expect([first.status, second.status]).toEqual([0, 0]);
  expect(readFileSync(at("a.xlsx")).equals(readFileSync(at("b.xlsx")))).toBe(true);
  expect(`${first.stdout}${first.stderr}`).not.toMatch(/AF-\d{4}/);
  const workbook = new ExcelJS.Workbook();
  await workbook.xlsx.readFile(at("a.xlsx"));
  expect(workbook.worksheets.map(({ name }) => name)).toEqual(["Child page (family)"]);
  expect(workbook.worksheets[0]?.pageSetup).toMatchObject({ orientation: "portrait", fitToWidth: 1, fitToHeight: 1 });
  expect(workbook.worksheets[0]?.headerFooter.oddHeader).toContain("For the family and the child's clinician");
}, 60_000);

test.each([
  [["--child", "AF-9999"], /No child in Children has that id/],
  [["--child", "AF-0001"], /not in the program on that day/],
  [["--therapist", "T99"], /No child in the program on that day has that therapist/],
  [[], /one of the two/],
  [["--child", "AF-0089", "--therapist", "T01"], /one of the two/],
])(
  "%j: exit 2, a sentence that lists nobody, and nothing written",
  async (words, message) => {
    const run = await page(...words, "--out", at("none.xlsx"));
    expect(run.status).toBe(2);
    expect(run.stderr).toMatch(message);
    expect(run.stderr).not.toMatch(/AF-\d|T\d\d/);
    expect(run.stdout).toBe("");
    expect(existsSync(at("none.xlsx"))).toBe(false);
  },
  60_000,
);

test("never overwrites the workbook it reads, and needs a day", async () => {
  expect((await page("--child", "AF-0089", "--out", BOOK)).stderr).toMatch(/nothing was written/);
  expect(await spoken(["page", BOOK, "--child", "AF-0089", "--out", at("n.xlsx")])).toMatchObject({ status: 2 });
});

componentTest(
  ["soffice", "pdftotext", "pdfinfo"],
  "LibreOffice prints each page on one sheet of Letter paper",
  async () => {
    const subjects = [
      ["--child", "AF-0169"],
      ["--child", "AF-0194"],
      ["--child", "AF-0237"],
      ["--therapist", "T01"],
      ["--therapist", "T11"],
    ];
    const files = subjects.map((_, index) => at(`print${index}.xlsx`));
    for (const [index, words] of subjects.entries()) {
      expect((await page(...words, "--out", files[index] as string)).status).toBe(0);
    }
    withAllConverted(files, "pdf", (pdfs) => {
      for (const [index, pdf] of pdfs.entries()) {
        const [option, subject = ""] = subjects[index] ?? [];
        const info = execFileSync("pdfinfo", [pdf]).toString();
        expect(info).toMatch(/Pages: +1\n/);
        expect(info).toMatch(/612 x 792|letter/i);
        const text = execFileSync("pdftotext", ["-layout", pdf, "-"]).toString();
        expect(text).toContain(option === "--child" ? "For the family" : "INTERNAL");
        expect(text).not.toContain("###");
        expect(text).toContain(subject);
      }
    });
  },
);
