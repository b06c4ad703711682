import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { dayOf } from "../../src/age/day";
import { scanCsv } from "../../src/hosts/file/scan/scan-csv";
import type { ScanRules } from "../../src/hosts/file/scan/scan-texts";
import { scanWorkbook } from "../../src/hosts/file/scan/scan-workbook";
import { readWorkbook } from "../../src/hosts/file/read-workbook";
import { writeWorkbook } from "../../src/hosts/file/write-workbook";
import type { Records } from "../../src/records/records";
import type { ReleasedTable } from "../../src/release/release-table";
import { allowedDates } from "../../src/report/release/fine-dates";
import { privateTextsOf } from "../../src/report/release/private-texts";
import { releaseCsv } from "../../src/report/release/release-csv";
import { releaseText } from "../../src/report/release/release-text";
import { releaseSheets } from "../../src/report/release-sheets";
import { BANDS, CONTEXT, prepared, SKILLS, STEPS } from "./support/prepared";

/** Invented records with a canary of each kind. */
const RECORDS = {
  children: { ids: ["CANARY-7", "12", "Wren"], family: ["FAM-9", "", ""] },
  enrolments: {
    child: Int32Array.of(0, 1, 2),
    columns: [
      { heading: "Site", values: ["North", "South", "North"] },
      { heading: "Therapist", values: ["T-01", "T-02", "T-01"] },
      { heading: "Nickname", values: ["Little Sparrow Q", "Robin", "met"] },
      { heading: "Language", values: ["English", "English", "English"] },
    ],
  },
  observations: { observers: ["OB-3"] },
  skills: SKILLS,
  referrals: {
    from: ["clinic"],
    areas: [["speech"]],
    reason: ["does not turn to sounds"],
    to: ["Dr. Q in the old mill"],
  },
  signs: { sign: ["stares at lights"] },
  ratings: null,
} as unknown as Records;

const rules = (by: readonly string[] = ["Site"]): ScanRules => ({
  privateTexts: privateTextsOf(RECORDS, by, prepared().tables),
  allowedDates: allowedDates(
    [CONTEXT.asOf, CONTEXT.from],
    SKILLS.map(({ basis }) => basis),
  ),
  asOf: CONTEXT.asOf,
});

const created = dayOf(2026, 9, 30);
const written = (tables: readonly ReleasedTable[] = [BANDS, STEPS]) =>
  writeWorkbook(releaseSheets(prepared(tables), CONTEXT), { created });
const scanned = (bytes: Uint8Array, by?: readonly string[]) =>
  scanWorkbook(bytes, rules(by)).then(
    () => "clean",
    (error: Error) => error.message,
  );

/** BANDS with another name for its first site. */
const withLabel = (label: string): ReleasedTable => ({
  ...BANDS,
  rows: BANDS.rows.map((row, index) => (index === 0 ? [label, ...row.slice(1)] : row)),
});

describe("the workbook", () => {
  test("passes its own scan, and a second run gives the same bytes", async () => {
    expect(await scanned(written())).toBe("clean");
    expect(Buffer.from(written()).equals(Buffer.from(written()))).toBe(true);
  });

  test("says first how it was prepared, what * means, who decides and what is not covered", async () => {
    const { sheets } = await readWorkbook(written());
    expect(sheets.map(({ name }) => name)).toEqual([
      "Read me first",
      "Met by age group",
      "Referral steps",
      "Sentences",
      "Published ages",
    ]);
    const text = sheets[0]!.grid.strings.join("\n");
    for (const said of [
      /at least 11: no count of 1 to 10/,
      /"\*" means held back/,
      /45 CFR 164\.514 and 34 CFR 99\.31\(b\)/,
      /joined or left in between/,
    ])
      expect(text).toMatch(said);
  });

  test("never tells how many of the hidden counts are small, nor of which group all or none have something", async () => {
    const release = {
      ...prepared(),
      protection: { ...prepared().protection, small: 77_123 },
      attack: { attacked: 77_123, witnesses: 77_123 },
    };
    const { sheets } = await readWorkbook(writeWorkbook(releaseSheets(release, CONTEXT), { created }));
    const all = sheets.flatMap(({ grid }) => grid.strings).join("\n");
    expect(all).not.toMatch(/77,?123/);
    expect(all).not.toContain(release.flags[0]);
  });

  test("a hidden figure is the symbol, in a table with its footnote, method and notes", async () => {
    const { sheets } = await readWorkbook(written());
    const { strings } = sheets[1]!.grid;
    expect(strings).toContain("*");
    expect(strings.join("\n")).toMatch(/Footnote\n.*Who is counted: .*\nMethod: /);
    expect(strings).toContain("Walks several steps alone");
  });
});

describe("canaries: each is refused, with the part", () => {
  test.each([
    ["the id of a child", "CANARY-7", /the identifier of a child/],
    ["an id within a label", "North (canary-7)", /the identifier of a child/],
    ["an id that is a word", "Wren", /the identifier of a child/],
    ["a family", "FAM-9", /the code of a family/],
    ["a therapist", "T-02", /the code of a therapist/],
    ["an observer", "OB-3", /the code of an observer/],
    ["a further column", "Little Sparrow Q", /a text of a column of Children/],
    ["a reason", "does not turn to sounds", /a free text of a referral/],
    ["where to", "ask dr. q in the old mill", /a free text of a referral/],
    ["a sign", "stares at lights", /a warning sign/],
    ["a birth date", "born 2025-03-04", /a date finer than the quarter/],
    ["a date in words", "since March 4, 2025", /a date finer than the quarter/],
    ["a month", "March 2025", /a date finer than the quarter/],
  ])("%s", async (_, label, message) => {
    const tables = [withLabel(label)];
    const found = await scanned(written(tables));
    expect(found).toMatch(message);
    expect(found).toMatch(/^The part \S.* of what was to be written has .*nothing was written/);
    expect(found).not.toContain(label);
    expect(() => scanCsv("a.csv", releaseCsv(tables[0]!), rules())).toThrow(message);
  });

  test("a therapist's code may stand where the release is grouped by it; a name of a single child may not even then", async () => {
    expect(await scanned(written([withLabel("T-02")]), ["Therapist"])).toBe("clean");
    expect(await scanned(written([withLabel("Robin")]), ["Nickname"])).toMatch(/a text of a column/);
  });

  test("a bare number, a site, a source, an area, the day of the release are no canaries", async () => {
    expect(await scanned(written([withLabel("clinic")]))).toBe("clean");
    expect(() => scanCsv("a.csv", "a,b\r\n12,speech\r\n2026-09-30,met\r\n", rules())).not.toThrow();
  });
});

describe("what other programs put into a workbook is refused", () => {
  const base = unzipSync(written());
  const sheet = "xl/worksheets/sheet2.xml";
  const edited = (path: string, from: string | RegExp, to: string) => {
    const xml = strFromU8(base[path]!);
    const changed = xml.replace(from, to);
    expect(changed).not.toBe(xml);
    return zipSync({ ...base, [path]: strToU8(changed) });
  };
  const added = (path: string, content = "<a/>") => zipSync({ ...base, [path]: strToU8(content) });

  test.each([
    ["a formula", () => edited(sheet, /<c r="E4"([^>]*)>/, '<c r="E4"$1><f>1+1</f>'), /sheet2.xml.*a formula/],
    [
      "a hidden sheet",
      () => edited("xl/workbook.xml", '<sheet name="Sentences"', '<sheet state="veryHidden" name="Sentences"'),
      /a hidden sheet/,
    ],
    ["a hidden row", () => edited(sheet, "<row ", '<row hidden="1" '), /a hidden row/],
    [
      "a defined name",
      () => edited("xl/workbook.xml", "</definedNames>", '<definedName name="Children">1</definedName></definedNames>'),
      /a defined name/,
    ],
    ["an author", () => edited("docProps/core.xml", "<dc:creator>", "<dc:creator>A. Person"), /core.xml.*author/],
    [
      "who changed it last",
      () => edited("docProps/core.xml", "<cp:lastModifiedBy>", "<cp:lastModifiedBy>A. Person"),
      /author/,
    ],
    [
      "the clock",
      () => edited("docProps/core.xml", "T00:00:00Z</dcterms:created>", "T09:12:33Z</dcterms:created>"),
      /moment of writing/,
    ],
    ["a company", () => edited("docProps/app.xml", /<Company>/, "<Company>A company"), /app.xml/],
    [
      "a link outside",
      () =>
        edited(
          "xl/_rels/workbook.xml.rels",
          "</Relationships>",
          '<Relationship Id="x" Type="http://a/b" Target="https://example.org" TargetMode="External"/></Relationships>',
        ),
      /a link to outside/,
    ],
    [
      "a path of its user",
      () =>
        edited(
          "xl/workbook.xml",
          "<bookViews>",
          '<x15ac:absPath xmlns:x15ac="http://x" url="C:/Users/a/"/><bookViews>',
        ),
      /workbook.xml.*another format/,
    ],
    [
      "a hyperlink",
      () => edited(sheet, "</sheetData>", '</sheetData><hyperlinks><hyperlink ref="A1"/></hyperlinks>'),
      /a link/,
    ],
    [
      "a picture",
      () => edited(sheet, "</worksheet>", '<drawing xmlns:r="http://r" r:id="a"/></worksheet>'),
      /a drawing/,
    ],
    ["an external workbook", () => added("xl/externalLinks/externalLink1.xml"), /a link to another workbook/],
    ["a calculation chain", () => added("xl/calcChain.xml"), /a chain of formulas/],
    ["a pivot cache", () => added("xl/pivotCache/pivotCacheRecords1.xml"), /pivot/],
    ["comments", () => added("xl/comments1.xml"), /comments/],
    ["custom XML", () => added("customXml/item1.xml"), /custom data/],
    ["custom properties", () => added("docProps/custom.xml"), /custom properties/],
    ["macros", () => added("xl/vbaProject.bin"), /macros/],
    ["printer settings", () => added("xl/printerSettings/printerSettings1.bin"), /printer/],
    ["an unknown part", () => added("xl/whatever.xml"), /does not need/],
    ["bytes behind the end", () => Uint8Array.of(...written(), 67, 65, 78), /at the end of the file/],
    [
      "a date as a number",
      () =>
        writeWorkbook(
          [
            ...releaseSheets(prepared(), CONTEXT),
            { name: "X", columns: [], rows: [[{ value: 20_000, format: "date" }]] },
          ],
          { created },
        ),
      /a date finer/,
    ],
  ])("%s", async (_, make, message) => {
    const found = await scanned(make());
    expect(found).toMatch(message);
    expect(found).toMatch(/nothing was written/);
  });
});

describe("CSV", () => {
  /** RFC 4180, 2: CRLF, a header, fields with commas, quotes or breaks in quotes, quotes doubled. */
  test("is RFC 4180 with a byte order mark", () => {
    const text = releaseCsv(withLabel('North, "new"\nwing'));
    expect(text.charCodeAt(0)).toBe(0xfeff);
    const lines = text.slice(1).split("\r\n");
    expect(lines[0]).toBe("Site,skill,area,band,children,assessed,met,shareMet,lower,upper");
    expect(lines[1]).toBe(
      '"North, ""new""\nwing",walk-alone,gross motor,12 to <18 months,90,85,53,0.6235294117647059,0.5173,0.7189',
    );
    expect(lines[2]).toBe("South,walk-alone,gross motor,12 to <18 months,40,37,*,*,*,*");
    expect(text.endsWith("\r\n")).toBe(true);
    expect(releaseCsv(STEPS)).toContain("plan,30,*,*,*,*,*,11 to 19,25\r\n");
  });

  /** OWASP, "CSV Injection": = + - @ tab CR at the start of a field; also after a separator of another language. */
  test.each(["=1+1", "+1", "-1", "@SUM(A1)", "\t=1", "\r=1", "North;=1+1", "a\n=1"])("%j stays text", (label) => {
    const csv = releaseCsv(withLabel(label)).slice(1);
    const field = csv.slice(csv.indexOf("\r\n") + 2);
    expect(field).not.toMatch(/^"?[=+\-@\t\r]/);
    expect(field).not.toMatch(/[;\t\n]"?[=+\-@]/);
    expect(field).toContain("'");
    expect(() => scanCsv("a.csv", csv, rules())).not.toThrow();
  });

  test("a formula in a CSV of other making is refused", () => {
    expect(() => scanCsv("a.csv", "a\r\n=1+1\r\n", rules())).toThrow(/takes for a formula/);
    expect(() => scanCsv("a.csv", 'a"b\r\n', rules())).toThrow(/not CSV/);
  });
});

test("the text that goes with CSV and pictures carries rule, symbol, decision, footnotes and sentences", () => {
  const text = releaseText(prepared(), CONTEXT);
  for (const said of [
    /^Read me first: a release prepared with Windowline/,
    /at least 11/,
    /34 CFR 99\.31\(b\)/,
    /met-by-band: Children who/,
    /Who is counted: /,
    /53 of 85 children/,
    /Published ages.*\n\n"Walks several steps alone": 8\.2 to 17\.6 months, from the 1st to the 99th percentile/,
  ])
    expect(text).toMatch(said);
});
