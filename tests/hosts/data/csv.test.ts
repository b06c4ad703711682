import { writeFileSync } from "node:fs";
import path from "node:path";
import { readCsv } from "../../../src/hosts/data/read-csv";
import { shownText } from "../../../src/records/cells/cell-text";
import { temporaryFolder } from "../../support/windowline";

const folder = temporaryFolder();
let files = 0;

async function read(content: string | Uint8Array) {
  const file = path.join(folder, `[${(files += 1)}]*.csv`);
  writeFileSync(file, content);
  const [sheet] = (await readCsv(file, "observations")).sheets;
  const { grid } = sheet!;
  return Array.from({ length: grid.rowCount }, (_, row) =>
    grid.columns.map((__, column) => shownText(grid, row, column)),
  );
}

/** RFC 4180, section 2: the seven rules of the format; the byte order mark is that of RFC 3629, section 6. */
test.each([
  [
    "lines that end in a line feed",
    "a,b\n1,2\n",
    [
      ["a", "b"],
      ["1", "2"],
    ],
  ],
  [
    "lines that end in both, the last in none",
    "a,b\r\n1,2",
    [
      ["a", "b"],
      ["1", "2"],
    ],
  ],
  [
    "quotes around commas, line ends and quotes",
    'a,b\n"1,5","x\ny ""z"""\n',
    [
      ["a", "b"],
      ["1,5", 'x\ny "z"'],
    ],
  ],
  [
    "a byte order mark",
    "\uFEFFa,b\n1,2\n",
    [
      ["a", "b"],
      ["1", "2"],
    ],
  ],
  [
    "empty cells",
    'a,b,c\n,"",3\n',
    [
      ["a", "b", "c"],
      ["", "", "3"],
    ],
  ],
  [
    "semicolons, as many spreadsheets write",
    "a;b\n1,5;2\n",
    [
      ["a", "b"],
      ["1,5", "2"],
    ],
  ],
  [
    "tabs",
    "a\tb\n1\t2\n",
    [
      ["a", "b"],
      ["1", "2"],
    ],
  ],
  [
    "a quote within a cell",
    'a,b\n6",2\n',
    [
      ["a", "b"],
      ['6"', "2"],
    ],
  ],
])("%s", async (_, content, rows) => {
  expect(await read(content)).toEqual(rows);
});

test("every cell is the text that it is: nothing is taken for a number, a date or a truth value", async () => {
  const cells = ["007", "1e5", "2026-02-30", "true", "NULL", "3/4/2025", " x "];
  expect((await read(`${cells.map((__, at) => `h${at}`).join(",")}\n${cells.join(",")}\n`))[1]).toEqual(
    cells.map((cell) => cell.trim()),
  );
});

test("a blank line takes a number, so that a row keeps the one that it has in the file", async () => {
  const rows = await read("a,b\n\n1,2\n\n\n3,4\n\n");
  expect(rows).toEqual([
    ["a", "b"],
    ["", ""],
    ["1", "2"],
    ["", ""],
    ["", ""],
    ["3", "4"],
  ]);
});

test("tens of thousands of rows come whole and in order", async () => {
  const lines = Array.from({ length: 50_000 }, (_, at) => `${at},${at % 7}`);
  const rows = await read(`a,b\n${lines.join("\n")}\n`);
  expect(rows.slice(1).map((row) => row.join(","))).toEqual(lines);
});

describe("a torn file is refused with its line, and no cell of it is told", () => {
  test.each([
    ["a line with fewer cells", "a,b,c\n1,2,3\nsecret,2\n", /^line 3 has 2 cells, and the line of headings has 3/],
    ["a line with more cells", "a,b\nsecret,2,3\n", /^line 2 has 3 cells/],
    ["an open quote", 'a,b\n1,"secret\n3,4\n', /^line 2 opens a quote that nothing closes/],
    ["words after a quote", 'a,b\n1,"secret"x\n', /^line 2 has words after a closing quote/],
    ["a zero byte", "a,b\n1,2\n3,se\0cret\n", /^line 3 has a zero byte/],
    ["a file cut off within a quote", 'a,b\n1,2\n3,"secr', /^line 3 opens a quote/],
    ["line ends that change", "a,b\r\n1,secret\n2,3\n", /^line 2 ends otherwise than the lines before it/],
    ["another encoding", Uint8Array.of(0x61, 0x2c, 0x62, 0x0a, 0x31, 0x2c, 0xe9, 0x0a), /^line 2 is not UTF-8/],
    ["UTF-16", Uint8Array.of(0xff, 0xfe, 0x61, 0x00), /is not UTF-8\. Save it as “CSV UTF-8”/],
    ["no content", "", /is empty/],
    ["one heading alone", "a\n1\n", /one heading alone/],
  ])("%s", async (_, content, message) => {
    const failure = await read(content).then(
      () => null,
      (error: Error) => error,
    );
    expect(failure?.name).toBe("UnreadableExtract");
    expect(failure?.message).toMatch(message);
    expect(failure?.message).not.toMatch(/secr/);
  });
});
