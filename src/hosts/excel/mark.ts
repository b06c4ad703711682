/// <reference types="office-js" />

/** The custom property of a worksheet by which an added sheet is known again, after a reload too. */
const PROPERTY = "Windowline";
/**
 * A hidden name of the workbook for each added sheet, over its cells. It follows the sheet through renaming and reopening.
 * A copy of the sheet has the custom property too, and this name does not lead to it.
 */
const ANCHOR = "Windowline_";

/** What an added sheet says about itself. It holds nothing about children. */
export interface Mark {
  readonly kind: "report" | "decisions";
  /** Counts the runs of a workbook; 0 for the decisions. */
  readonly run: number;
  readonly label: string;
  /** Random: one run, one sheet. Empty in sheets that version 0.1.0 added. */
  readonly key: string;
  /** The name that the sheet was given, and the id that Excel gave it then: for workbooks whose names were lost. */
  readonly name: string;
  readonly id: string;
  /** False until the whole run stands. */
  readonly whole: boolean;
}

export interface MarkedSheet {
  readonly id: string;
  readonly name: string;
  /** Null for the user's own sheets, copies of an added one among them. */
  readonly mark: Mark | null;
  /** The mark of a sheet that cannot be told from a copy; null for all others. */
  readonly unsure: Mark | null;
  /** The key of the added sheet that this one is a copy of; null for all others. */
  readonly copyOf: string | null;
}

export function newKey(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(8));
  return [...bytes].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}

export function setMark(sheet: Excel.Worksheet, mark: Mark): void {
  sheet.customProperties.add(PROPERTY, JSON.stringify(mark));
}

export function anchorName(key: string): string {
  return `${ANCHOR}${key}`;
}

/** The mark of one sheet, to be loaded; `markIn` reads it afterwards. */
export function askMark(sheet: Excel.Worksheet): Excel.WorksheetCustomProperty {
  return sheet.customProperties.getItemOrNullObject(PROPERTY).load("value");
}

/** Null where there is none, or a text that is no mark. */
export function markIn(property: Excel.WorksheetCustomProperty | undefined): Mark | null {
  return property && !property.isNullObject ? parsed(property.value) : null;
}

/** Every sheet in its order, hidden ones too, with the mark of those that were added here. */
export async function markedSheets(context: Excel.RequestContext): Promise<MarkedSheet[]> {
  const { worksheets, names } = context.workbook;
  worksheets.load("items/id,items/name");
  names.load("items/name");
  await context.sync();
  const properties = worksheets.items.map(askMark);
  const anchored = names.items.filter(({ name }) => name.startsWith(ANCHOR));
  const ranges = anchored.map((name) => name.getRangeOrNullObject().load("address"));
  await context.sync();
  const anchors = new Map(
    anchored.map(({ name }, index) => [name.slice(ANCHOR.length), sheetOf(ranges[index] as Excel.Range)]),
  );
  const sheets = worksheets.items.map(({ id, name }, index) => ({ id, name, mark: markIn(properties[index]) }));
  return sheets.map((sheet) => ({ ...sheet, ...judged(sheet, sheets, anchors) }));
}

interface Bearer {
  readonly id: string;
  readonly name: string;
  readonly mark: Mark | null;
}

type Judgment = Pick<MarkedSheet, "mark" | "unsure" | "copyOf">;

const OWN: Judgment = { mark: null, unsure: null, copyOf: null };

/** Which of the sheets that bear one mark is the one that was added, as far as the workbook can tell. */
function judged(sheet: Bearer, sheets: readonly Bearer[], anchors: ReadonlyMap<string, string | null>): Judgment {
  const { mark } = sheet;
  if (!mark) return OWN;
  const [ours, copy] = [
    { ...OWN, mark },
    { ...OWN, copyOf: mark.key },
  ];
  if (anchors.has(mark.key)) return anchors.get(mark.key) === sheet.name ? ours : copy;
  const bearers = sheets.filter((each) => each.mark && sameMark(each.mark, mark));
  const known =
    bearers.find(({ id, mark: its }) => its?.id === id) ?? bearers.find(({ name, mark: its }) => its?.name === name);
  if (known) return known === sheet ? ours : copy;
  return { ...OWN, unsure: mark };
}

function sameMark(a: Mark, b: Mark): boolean {
  return a.key === "" ? a.run === b.run && a.id === b.id && a.name === b.name : a.key === b.key;
}

/** The sheet of an address such as `'Met by band'!1:1048576`; null where its name leads nowhere any more. */
function sheetOf(range: Excel.Range): string | null {
  if (range.isNullObject) return null;
  const name = range.address.slice(0, range.address.lastIndexOf("!"));
  return name.startsWith("'") ? name.slice(1, -1).replaceAll("''", "'") : name;
}

function parsed(text: string): Mark | null {
  try {
    const { key = "", whole = true, ...mark } = JSON.parse(text) as Partial<Record<keyof Mark, unknown>>;
    const { kind, run, label, name, id } = mark;
    const isMark =
      (kind === "report" || kind === "decisions") &&
      typeof run === "number" &&
      [label, name, id, key].every((each) => typeof each === "string");
    return isMark ? ({ kind, run, label, key, name, id, whole: whole === true } as Mark) : null;
  } catch {
    return null;
  }
}
