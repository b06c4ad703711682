import fc from "fast-check";

/** One generated cell: the bytes that write it (without its address) and what they mean by ECMA-376. */
interface Written {
  readonly type: string | null;
  readonly inside: string;
  /** As `cellsOf` shows it; undefined where the cell is empty. */
  readonly meaning: unknown;
  readonly isDate: boolean;
}

export interface GeneratedSheet {
  readonly rows: string;
  readonly sharedItems: readonly string[];
  readonly expected: Record<string, unknown>;
}

const number = fc.oneof(
  fc.integer({ min: -1_000_000, max: 1_000_000 }).map(String),
  fc.double({ noNaN: true, noDefaultInfinity: true }).map((value) => (Object.is(value, -0) ? "-0" : String(value))),
  fc
    .tuple(fc.integer(), fc.nat(999_999), fc.nat(14))
    .map(([whole, part, places]) => `${whole}.${"0".repeat(places)}${part}`),
  fc.stringMatching(/^[+-]?([0-9]{1,25}\.?[0-9]{0,25}|\.[0-9]{1,25})([eE][+-]?[0-9]{1,2})?$/),
);

/** Text of every kind that XML 1.0 can hold: plain, wide, marks that must be escaped, look-alikes of escapes. */
const text = fc
  .array(
    fc.oneof(
      { weight: 5, arbitrary: fc.stringMatching(/^[ -~]{0,8}$/) },
      fc.constantFrom(
        "&",
        "<",
        ">",
        "]]>",
        '"',
        "'",
        "\n",
        "\t",
        "_x000D_",
        "_x",
        "_",
        "__proto__",
        "\uFEFF",
        "é",
        "課",
        "👶",
      ),
      fc
        .string({ unit: "grapheme", maxLength: 5 })
        .map((each) => each.replace(/[^\t\n\x20-\uD7FF\uE000-\uFFFD\u{10000}-\u{10FFFF}]/gu, "")),
    ),
    { maxLength: 5 },
  )
  .map((pieces) => pieces.join(""));

/** The bytes of a text, each mark written as one of the ways that mean it. */
const writtenText = fc.tuple(text, fc.array(fc.nat(3), { maxLength: 12 })).map(([value, ways]) => ({
  meaning: value.replace(/_x([0-9A-Fa-f]{4})_/g, (_, code: string) => String.fromCharCode(parseInt(code, 16))),
  xml: [...value].map((mark, index) => written(mark, ways[index] ?? 0)).join(""),
}));

function written(mark: string, way: number): string {
  const code = mark.codePointAt(0) as number;
  const named = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;", "'": "&apos;" }[mark];
  if (way === 1) return `&#${code};`;
  if (way === 2) return `&#x${code.toString(16)};`;
  return named ?? (mark === "\n" && way === 3 ? "\r\n" : mark);
}

const filled = fc.oneof(
  { weight: 3, arbitrary: number.map((value) => cell(null, `<v>${value}</v>`, Number(value))) },
  { weight: 1, arbitrary: number.map((value) => cell("n", `<f>A1+1</f><v>${value}</v>`, Number(value))) },
  writtenText.map(({ xml, meaning }) => cell("str", `<f>A1&amp;B1</f><v>${xml}</v>`, meaning || undefined)),
  {
    weight: 2,
    arbitrary: writtenText.map(({ xml, meaning }) => cell("inlineStr", `<is><t>${xml}</t></is>`, meaning || undefined)),
  },
  writtenText.map(({ xml, meaning }) =>
    cell(
      "inlineStr",
      `<is><r><rPr><b/></rPr><t xml:space="preserve">${xml}</t></r><r><t>!</t></r></is>`,
      `${meaning}!`,
    ),
  ),
  fc.boolean().map((value) => cell("b", `<v>${value ? 1 : 0}</v>`, value)),
  fc.constantFrom("#N/A", "#DIV/0!").map((value) => cell("e", `<v>${value}</v>`, `error: ${value}`)),
  fc
    .constantFrom("<f>A1</f>", "<f>A1</f><v></v>", "<f>A1</f><v/>")
    .map((inside) => cell(null, inside, "no cached value")),
  fc.constantFrom("", "<v/>", "<v></v>").map((inside) => cell(null, inside, undefined)),
  fc.constant(cell("d", "<v>2024-01-01T12:00:00</v>", "date: 45292.5")),
);

function cell(type: string | null, inside: string, meaning: unknown): Written {
  return { type, inside, meaning, isDate: typeof meaning === "number" };
}

const space = fc.constantFrom("", "", "", " ", "\n", "\r\n\t");
const spacing = fc.constantFrom(" ", " ", " ", "  ", "\n");
const quote = fc.constantFrom('"', '"', '"', "'");

/** What surrounds a cell without meaning anything: order of attributes, quotes, spaces, strangers. */
const dress = fc.record({
  order: fc.shuffledSubarray(["r", "s", "t", "cm"], { minLength: 4 }),
  quote,
  spacing,
  before: space,
  tail: fc.constantFrom("", "", "", " "),
  addressed: fc.constantFrom(true, true, true, false),
  strange: fc.constantFrom("", "", "", "", "<!-- c -->", "<?pi x?>"),
});

const row = fc.record({
  cells: fc.array(
    fc.record({ written: filled, dress, skip: fc.nat(2), style: fc.constantFrom(null, 0, 1, 7), shared: fc.nat(12) }),
    { maxLength: 6 },
  ),
  skip: fc.nat(2),
  addressed: fc.boolean(),
  ending: space,
  extra: fc.constantFrom(
    "",
    ' spans="1:4"',
    " ht='15.75' customHeight='1'",
    ' x14ac:dyDescent="0.25" xmlns:x14ac="urn:x"',
  ),
});

/** A sheet's rows as XML, and what they mean, worked out while they are written. */
export const generatedSheet: fc.Arbitrary<GeneratedSheet> = fc
  .tuple(fc.array(row, { maxLength: 6 }), fc.array(writtenText, { maxLength: 4 }))
  .map(([rows, shared]) => writeSheet(rows, shared));

type Row = typeof row extends fc.Arbitrary<infer T> ? T : never;
type Shared = typeof writtenText extends fc.Arbitrary<infer T> ? T : never;

function writeSheet(rows: readonly Row[], shared: readonly Shared[]): GeneratedSheet {
  const expected: Record<string, unknown> = {};
  let at = -1;
  const written = rows.map((each) => {
    at += 1 + (each.addressed ? each.skip : 0);
    return rowXml(each, at, shared, expected);
  });
  const sharedItems = shared.map(({ xml }, index) =>
    index % 2 ? `<t>${xml}</t>` : `<t xml:space="preserve">${xml}</t>`,
  );
  return { rows: written.join(""), sharedItems, expected };
}

function rowXml(each: Row, at: number, shared: readonly Shared[], expected: Record<string, unknown>): string {
  let column = -1;
  const cells = each.cells.map((one) => {
    column += 1 + (one.dress.addressed ? one.skip : 0);
    const sharedText = shared[one.shared];
    const content =
      sharedText === undefined ? one.written : cell("s", `<v>${one.shared}</v>`, sharedText.meaning || undefined);
    const isDate = content.isDate && one.style === 1;
    if (content.meaning !== undefined)
      expected[`${at},${column}`] = isDate ? `date: ${String(content.meaning)}` : content.meaning;
    return cellXml(one, content, `${String.fromCharCode(65 + column)}${at + 1}`);
  });
  return `<row${each.addressed ? ` r="${at + 1}"` : ""}${each.extra}>${cells.join("")}${each.ending}</row>${each.ending}`;
}

function cellXml(one: Row["cells"][number], content: Written, address: string): string {
  const { order, quote: mark, spacing: gap, before, tail, addressed, strange } = one.dress;
  const values: Record<string, string | null> = {
    r: addressed ? address : null,
    s: one.style === null ? null : String(one.style),
    t: content.type,
    cm: one.skip === 2 ? "1" : null,
  };
  const attributes = order
    .map((name) => (values[name] === null ? "" : `${gap}${name}=${mark}${values[name]}${mark}`))
    .join("");
  if (content.inside === "" && strange === "") return `${before}<c${attributes}${tail}/>`;
  return `${before}<c${attributes}${tail}>${strange}${content.inside}${before}</c>`;
}
