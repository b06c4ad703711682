import { crc32 } from "node:zlib";
import { scanPng, SOFTWARE } from "../../src/hosts/file/scan/scan-png";
import { scanSvg } from "../../src/hosts/file/scan/scan-svg";
import type { ScanRules } from "../../src/hosts/file/scan/scan-texts";
import { answerPictures, picturesOf } from "../../src/report/release/pictures";
import type { ReleasedTable } from "../../src/release/release-table";
import { BANDS, CONTEXT, STEPS } from "./support/prepared";

const rules: ScanRules = {
  privateTexts: {
    whole: new Map([["canary-7", "the identifier of a child"]]),
    within: new Map([["canary-7", "the identifier of a child"]]),
    lengths: [8],
  },
  allowedDates: ["September 30, 2026"],
  asOf: "2026-09-30",
};

describe("what is drawn", () => {
  test("shares with both numbers in words; what is held back has no bar, but a line of words", () => {
    const [picture] = picturesOf(STEPS, CONTEXT);
    expect(picture?.panels).toEqual([
      {
        title: "",
        heldBack: "Held back: plan.",
        bars: [
          {
            row: 0,
            panel: "",
            label: "referred",
            state: "shown",
            from: 0,
            to: 100,
            lower: 94.34,
            upper: 100,
            words: "64 of 64 (100.0%)",
          },
          {
            row: 1,
            panel: "",
            label: "evaluated",
            state: "shown",
            from: 0,
            to: 75,
            lower: 63.18,
            upper: expect.closeTo(83.99),
            words: "48 of 64 (75.0%)",
          },
        ],
      },
    ]);
  });

  test("the title says the finding; who is counted, when and the rule come below it; the alternative text is short", () => {
    const [picture] = picturesOf(STEPS, CONTEXT);
    expect(picture?.title).toMatch(/^Evaluated: 48 of 64 referrals made between .* \(75\.0%\)/);
    expect(picture?.below.join(" ")).toMatch(/^Referrals made in the period.*at least 11/);
    expect(picture?.altText).toMatch(
      /^Bar chart\. Evaluated: 48 of 64.* 2 bars, each with its numbers\. Some figures are held back/,
    );
    expect(picture?.altText.length).toBeLessThan(300);
  });

  test("a picture of a question is about its own figures: the answer is its title, and the plan in time is drawn", () => {
    const steps: ReleasedTable = {
      ...STEPS,
      rows: [...STEPS.rows.slice(0, 2), ["plan", 30, 25, 25 / 30, 0.66, 0.93, 21, 20, 25]],
    };
    const figure = {
      about: "plan within 45 days",
      sentence: "Of 25 referrals, 20 had a plan within 45 days.",
      rows: [2],
    };
    const answered = [{ id: "plans-in-time", name: "", asks: "", table: "referral-steps", figures: [figure] }];
    const [picture, ...others] = answerPictures([BANDS, steps], { ...CONTEXT, answered });
    expect(others).toEqual([]);
    expect(picture).toMatchObject({
      name: "answer-plans-in-time",
      title: "Of 25 referrals, 20 had a plan within 45 days.",
    });
    expect(picture?.panels[0]?.bars).toMatchObject([{ row: 2, to: 80, words: "20 of 25 (80.0%)" }]);
    const rounded = { ...CONTEXT, answered, rule: { ...CONTEXT.rule, method: "round" as const, base: 5 } };
    expect(answerPictures([steps], rounded)[0]?.panels[0]?.bars).toMatchObject([{ to: null, words: "20 of 25" }]);
  });

  test("no share is drawn whose numerator or denominator is held back, and a picture of nothing is not made", () => {
    const half: ReleasedTable = { ...STEPS, rows: [["evaluated", 64, "*", 0.75, 0.6, 0.8, null, null, null]] };
    expect(picturesOf(half, CONTEXT)).toEqual([]);
  });

  test("a range is drawn from its one end to the other, and where there is no figure the picture says so", () => {
    const column = (key: string, unit: "text" | "count") => ({ key, label: key, unit });
    const table: ReleasedTable = {
      ...STEPS,
      id: "referrals",
      columns: [column("dimension", "text"), column("value", "text"), column("referrals", "count")],
      rows: [
        ["site", "North", { from: 11, to: 21 }],
        ["site", "South", 40],
        ["area", "speech", null],
      ],
    };
    const [picture] = picturesOf(table, CONTEXT);
    expect(picture?.end).toBe(40);
    expect(picture?.panels.flatMap(({ bars }) => bars)).toMatchObject([
      { panel: "site", label: "North", state: "range", from: 11, to: 21, words: "11 to 21" },
      { panel: "site", label: "South", state: "shown", from: 0, to: 40, words: "40" },
      { panel: "area", label: "speech", state: "none", words: "no figure" },
    ]);
  });

  test("only rows of whole areas are drawn of a table by band; many panels go to several pictures", () => {
    expect(picturesOf(BANDS, CONTEXT).flatMap(({ panels }) => panels.map(({ title }) => title))).toEqual([
      "gross motor, Site North",
    ]);
    const many: ReleasedTable = {
      ...BANDS,
      rows: Array.from({ length: 130 }, (_, site) => [
        `S${site}`,
        "all",
        "speech",
        "0 to <3 months",
        90,
        80,
        40,
        0.5,
        null,
        null,
      ]),
    };
    const pictures = picturesOf(many, CONTEXT);
    expect(pictures.length).toBeGreaterThan(4);
    expect(pictures.map(({ name }) => name).slice(0, 2)).toEqual(["met-by-band-1", "met-by-band-2"]);
    expect(pictures.reduce((sum, { panels }) => sum + panels.length, 0)).toBe(130);
  });

  test("skills that were chosen are drawn in place of areas", () => {
    const pictures = picturesOf(BANDS, { ...CONTEXT, pictured: ["walk-alone"] });
    expect(pictures.flatMap(({ panels }) => panels.map(({ title, heldBack }) => [title, heldBack]))).toEqual([
      ["Walks several steps alone, Site North", ""],
      ["Walks several steps alone, Site South", "Held back: 12 to <18 months."],
    ]);
  });

  test("a panel longer than a page goes on in the next picture", () => {
    const long: ReleasedTable = {
      ...STEPS,
      rows: Array.from({ length: 70 }, (_, step) => [`step ${step}`, 64, 48, 0.75, 0.63, 0.84, null, null, null]),
    };
    const pictures = picturesOf(long, CONTEXT);
    expect(pictures.length).toBe(3);
    expect(pictures[1]?.panels[0]?.title).toBe("continued");
    expect(pictures.flatMap(({ panels }) => panels.flatMap(({ bars }) => bars))).toHaveLength(70);
  });
});

describe("the scan of pictures", () => {
  const svg = (inside: string) =>
    `<svg xmlns="http://www.w3.org/2000/svg"><title>As of September 30, 2026</title>${inside}</svg>`;
  const scan = (inside: string) => () => scanSvg("a.svg", svg(inside), rules);

  test("shapes and words pass", () => {
    expect(scan('<g><rect width="1"/><text>53 of 85</text></g>')).not.toThrow();
  });

  test.each([
    ["a script", "<script>1</script>", /an element that no picture needs \(script\)/],
    ["a style sheet", "<style>a{}</style>", /\(style\)/],
    ["a foreign object", "<foreignObject/>", /\(foreignObject\)/],
    ["metadata", "<metadata>A. Person</metadata>", /\(metadata\)/],
    ["a picture within", '<image href="a.png"/>', /\(image\)/],
    ["a link", '<g xlink:href="https://example.org"/>', /a link to outside/],
    ["a handler", '<g onload="x()"/>', /a link to outside/],
    ["a fill from outside", '<rect fill="url(https://example.org/a)"/>', /a link to outside/],
    ["a canary", "<text>North (CANARY-7)</text>", /the identifier of a child/],
    ["a birth date", "<text>2025-03-04</text>", /a date finer/],
    ["what is not XML", "<g>", /not XML/],
  ])("%s is refused", (_, inside, message) => {
    expect(scan(inside)).toThrow(message);
    expect(scan(inside)).toThrow(/^The part a\.svg .*nothing was written/);
  });

  const chunk = (type: string, text: string) => {
    const body = Buffer.from(type + text, "latin1");
    const [length, sum] = [Buffer.alloc(4), Buffer.alloc(4)];
    length.writeUInt32BE(text.length);
    sum.writeUInt32BE(crc32(body));
    return Buffer.concat([length, body, sum]);
  };
  const png = (...chunks: Buffer[]) =>
    new Uint8Array(
      Buffer.concat([Buffer.from("\x89PNG\r\n\x1a\n", "latin1"), chunk("IHDR", "x"), ...chunks, chunk("IEND", "")]),
    );

  test("PNG: an image and the name of its program pass; texts, times and tails do not", () => {
    expect(() => scanPng("a.png", png(chunk("IDAT", "x"), chunk("tEXt", SOFTWARE)))).not.toThrow();
    expect(() => scanPng("a.png", png(chunk("tEXt", "Author\0A. Person")))).toThrow(/its chunk tEXt/);
    expect(() => scanPng("a.png", png(chunk("tIME", "1234567")))).toThrow(/tIME/);
    expect(() => scanPng("a.png", png(chunk("eXIf", "x")))).toThrow(/eXIf/);
    expect(() => scanPng("a.png", Uint8Array.of(...png(), 1, 2, 3))).toThrow(/behind the image/);
    expect(() => scanPng("a.png", Uint8Array.of(1, 2, 3, 4, 5, 6, 7, 8))).toThrow(/not PNG/);
  });
});
