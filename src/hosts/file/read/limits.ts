/** What a workbook may cost, checked before it is paid. Every limit has its sentence where it is checked. */
export interface Limits {
  /** Bytes of the file itself. */
  readonly fileBytes: number;
  /** Parts in the zip file. */
  readonly entries: number;
  /** Bytes of all parts together once inflated, as declared and as counted. */
  readonly inflatedBytes: number;
  /** Inflated over deflated bytes of a part of more than `RATIO_FREE_BYTES`. */
  readonly ratio: number;
  /** Bytes of one part that only the fallback parser can read: it takes some ten times as long as the scanner. */
  readonly parsedBytes: number;
  readonly sheets: number;
  readonly rows: number;
  readonly columns: number;
  /** Cells for which there is room, empty ones between filled ones included. */
  readonly cells: number;
  /** Texts of the whole workbook, and the characters in them. */
  readonly texts: number;
  readonly textCharacters: number;
  /** Merged ranges, cell styles, tables: each kind on its own. */
  readonly marks: number;
}

/** Below this a part is harmless however well it compresses. */
export const RATIO_FREE_BYTES = 16_000_000;

/** Rows and columns: Microsoft, "Excel specifications and limits". The rest is room for large honest files. */
export const USUAL_LIMITS: Limits = {
  fileBytes: 500_000_000,
  entries: 10_000,
  inflatedBytes: 1_000_000_000,
  ratio: 250,
  parsedBytes: 250_000_000,
  sheets: 1_000,
  rows: 1_048_576,
  columns: 16_384,
  cells: 40_000_000,
  texts: 5_000_000,
  textCharacters: 200_000_000,
  marks: 200_000,
};
