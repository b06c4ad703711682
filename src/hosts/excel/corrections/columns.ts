/** The columns of the sheet of corrections, by the key of a row. `asWas` is how version 0.1.0 headed it. */
export interface Column {
  readonly key: string;
  readonly heading: string;
  readonly width: number;
  readonly asWas?: string;
  /** Only there once a row needs it. */
  readonly further?: true;
  /** Holds a number, or a list as JSON text. */
  readonly isJson?: true;
}

export const COLUMNS: readonly Column[] = [
  { key: "kind", heading: "Correction", width: 14, asWas: "Decision" },
  { key: "revoked", heading: "Revoked", width: 10 },
  { key: "table", heading: "Table", width: 14 },
  { key: "child", heading: "Child", width: 14 },
  { key: "skill", heading: "Skill", width: 26 },
  { key: "alias", heading: "Also written", width: 26 },
  { key: "column", heading: "Column", width: 18 },
  { key: "order", heading: "Order of dates", width: 16 },
  { key: "heading", heading: "Heading", width: 22 },
  { key: "means", heading: "Means", width: 18 },
  { key: "sheet", heading: "Sheet", width: 22, further: true },
  { key: "is", heading: "Holds", width: 16, further: true },
  { key: "headerRows", heading: "Heading rows", width: 12, further: true, isJson: true },
  { key: "headings", heading: "Headings", width: 40, further: true, isJson: true },
  { key: "word", heading: "Word", width: 18, further: true },
  { key: "spelling", heading: "Spelling", width: 22, further: true },
  { key: "label", heading: "Label", width: 26, further: true },
  { key: "area", heading: "Area", width: 18, further: true },
  { key: "opens", heading: "Opens", width: 10, further: true, isJson: true },
  { key: "closes", heading: "Closes", width: 10, further: true, isJson: true },
  { key: "ageBasis", heading: "Age basis", width: 14, further: true },
  { key: "expectedShare", heading: "Expected share", width: 14, further: true, isJson: true },
  { key: "basis", heading: "Basis", width: 22, further: true },
];

/** What a row must say, by its kind: without one of these columns its rows cannot be read. */
const NEEDED: Readonly<Record<string, readonly string[]>> = {
  "same-child": ["child", "alias"],
  "skill-alias": ["skill", "alias"],
  "date-order": ["table", "column", "order"],
  heading: ["table", "heading", "means"],
  "two-digit-years": ["means"],
  sheet: ["sheet", "is", "headerRows", "headings"],
  word: ["word", "means"],
  area: ["word", "means"],
  name: ["column", "spelling", "means"],
  skill: ["skill"],
};

export function neededBy(kind: string): readonly string[] {
  return Object.hasOwn(NEEDED, kind) ? (NEEDED[kind] as readonly string[]) : [];
}

/** Where the columns stand on a sheet: the row of the headings, and a column's place by its key. */
export interface Layout {
  readonly headingRow: number;
  readonly at: ReadonlyMap<string, number>;
  /** Every heading as it reads, ours and those of the person. */
  readonly headings: readonly string[];
}

type Values = readonly (readonly unknown[])[];

/** Rows above the headings that a person may have put there. */
const MOST_ROWS_ABOVE = 30;
/** So many of the headings make a row the row of the headings, when the first was renamed. */
const ENOUGH_HEADINGS = 4;

/** Null where no row has the headings. They are found wherever their row and columns were moved. */
export function layoutOf(values: Values): Layout | null {
  for (const [headingRow, cells] of values.slice(0, MOST_ROWS_ABOVE).entries()) {
    const headings = cells.map(textOf);
    const at = new Map(
      COLUMNS.flatMap(({ key, heading, asWas }) => {
        const place = headings.findIndex((each) => sameWords(each, heading) || sameWords(each, asWas ?? heading));
        return place < 0 ? [] : [[key, place] as const];
      }),
    );
    if ((at.has("kind") && at.has("revoked")) || at.size >= ENOUGH_HEADINGS) return { headingRow, at, headings };
  }
  return null;
}

export function textOf(value: unknown): string {
  return typeof value === "string" || typeof value === "number" || typeof value === "boolean"
    ? String(value).trim()
    : "";
}

function sameWords(a: string, b: string): boolean {
  return a.toLowerCase() === b.toLowerCase();
}
