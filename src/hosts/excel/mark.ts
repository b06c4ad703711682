/// <reference types="office-js" />

/** The custom property of a worksheet by which an added sheet is known again, after a reload too. */
const PROPERTY = "Windowline";

/**
 * What an added sheet says about itself. It holds nothing about children: the name that the sheet was given, the id that
 * Excel gave it, and the label of its run. A copy of the sheet carries the same mark, but has another id and another
 * name, so it is the user's own.
 */
export interface Mark {
  readonly kind: "report" | "decisions";
  /** Counts the runs of a workbook; 0 for the decisions. */
  readonly run: number;
  readonly label: string;
  readonly name: string;
  readonly id: string;
}

export interface MarkedSheet {
  readonly id: string;
  readonly name: string;
  /** Null for the user's own sheets. */
  readonly mark: Mark | null;
}

export function setMark(sheet: Excel.Worksheet, mark: Mark): void {
  sheet.customProperties.add(PROPERTY, JSON.stringify(mark));
}

/** Every sheet in its order, hidden ones too, with the mark of those that were added here. */
export async function markedSheets(context: Excel.RequestContext): Promise<MarkedSheet[]> {
  const { worksheets } = context.workbook;
  worksheets.load("items/id,items/name");
  await context.sync();
  const properties = worksheets.items.map((sheet) =>
    sheet.customProperties.getItemOrNullObject(PROPERTY).load("value"),
  );
  await context.sync();
  return worksheets.items.map(({ id, name }, index) => {
    const property = properties[index];
    return { id, name, mark: property && !property.isNullObject ? markOf(property.value, id, name) : null };
  });
}

/** Null for a text that is no mark, and for the mark of another sheet. */
function markOf(text: string, id: string, name: string): Mark | null {
  const mark = parsed(text);
  return mark && (mark.id === id || mark.name === name) ? mark : null;
}

function parsed(text: string): Mark | null {
  try {
    const { kind, run, label, name, id } = JSON.parse(text) as Partial<Record<keyof Mark, unknown>>;
    const isMark =
      (kind === "report" || kind === "decisions") &&
      typeof run === "number" &&
      [label, name, id].every((each) => typeof each === "string");
    return isMark ? ({ kind, run, label, name, id } as Mark) : null;
  } catch {
    return null;
  }
}
