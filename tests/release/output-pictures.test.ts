import { crc32 } from "node:zlib";
import { scanPng, SOFTWARE } from "../../src/hosts/file/scan/scan-png";
import { scanSvg } from "../../src/hosts/file/scan/scan-svg";
import type { ScanRules } from "../../src/hosts/file/scan/scan-texts";
import { pictureSpec } from "../../src/hosts/file/picture-spec";
import { picturesOf } from "../../src/report/release/pictures";
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
  test("shares with both numbers in words; what is held back is a bar of its own kind, with its word", () => {
    const [picture] = picturesOf(STEPS, CONTEXT);
    expect(picture?.panels).toEqual([
      {
        title: "",
        bars: [
          {
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
            panel: "",
            label: "evaluated",
            state: "shown",
            from: 0,
            to: 75,
            lower: 63.18,
            upper: expect.closeTo(83.99),
            words: "48 of 64 (75.0%)",
          },
          {
            panel: "",
            label: "plan",
            state: "held back",
            from: null,
            to: null,
            lower: null,
            upper: null,
            words: "* held back",
          },
        ],
      },
    ]);
  });

  test("the words for someone who does not see it say every bar, the day and the rule", () => {
    const [picture] = picturesOf(STEPS, CONTEXT);
    for (const said of [
      /as of September 30, 2026/,
      /evaluated: 48 of 64 \(75\.0%\)/,
      /plan: \* held back/,
      /at least 11/,
      /Drawn by Windowline\.$/,
    ])
      expect(picture?.altText).toMatch(said);
    expect(picture?.below.join(" ")).toMatch(/Hatched, with \*: held back/);
  });

  test("no share is drawn whose numerator or denominator is held back", () => {
    const half: ReleasedTable = { ...STEPS, rows: [["evaluated", 64, "*", 0.75, 0.6, 0.8, null, null, null]] };
    expect(picturesOf(half, CONTEXT)[0]?.panels[0]?.bars[0]).toMatchObject({ state: "held back", to: null });
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
    expect(pictures.map(({ name, panels }) => [name, panels.length])).toEqual([
      ["met-by-band-1", 90],
      ["met-by-band-2", 40],
    ]);
  });

  test("held back is drawn hatched over the whole axis", () => {
    const spec = JSON.stringify(pictureSpec(picturesOf(STEPS, CONTEXT)[0]!));
    const layer = spec.slice(spec.indexOf("'held back'"));
    expect(layer.indexOf('"fill":"url(#held-back)"')).toBeGreaterThan(0);
    expect(layer.indexOf('"fill":"url(#held-back)"')).toBeLessThan(layer.indexOf('"x2":{"field":"end"}'));
  });
});

describe("the scan of pictures", () => {
  const svg = (inside: string) =>
    `<svg xmlns="http://www.w3.org/2000/svg"><title>As of September 30, 2026</title>${inside}</svg>`;
  const scan = (inside: string) => () => scanSvg("a.svg", svg(inside), rules);

  test("shapes and words pass", () => {
    expect(scan('<g fill="url(#held-back)"><rect width="1"/><text>53 of 85</text></g>')).not.toThrow();
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
    ["what is no XML", "<g>", /no XML/],
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
    expect(() => scanPng("a.png", Uint8Array.of(1, 2, 3, 4, 5, 6, 7, 8))).toThrow(/no PNG/);
  });
});
