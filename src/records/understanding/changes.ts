import { keyOf } from "../cells/words";
import type { SheetDecision } from "../corrections/decisions";
import { isVirtual } from "../corrections/settled";
import type { Change, SheetTaken } from "./understanding";

/** What is not as it was settled: sheets and headings that moved, are gone, or are new. */
export function changesSince(before: readonly SheetDecision[], now: readonly SheetTaken[]): Change[] {
  if (before.length === 0) return [];
  const settled = before.filter(({ is }) => is !== "not used");
  return [
    ...settled.filter((each) => !now.some((sheet) => isOf(each, sheet))).flatMap((each) => sheetGone(each, now)),
    ...now.flatMap((sheet) => sheetChanges(sheet, before)),
  ];
}

/** The settled sheet that a sheet is read as: the one of its name and kind, or one that is laid out alike. */
function isOf(each: SheetDecision, sheet: SheetTaken): boolean {
  return sheet.is === each.is && keyOf(each.sheet) === keyOf(sheet.sheet);
}

function sheetGone({ sheet, is, headings }: SheetDecision, now: readonly SheetTaken[]): Change[] {
  const key = headings.map(({ heading }) => keyOf(heading)).join("|");
  const moved = now.find(
    (each) => each.is === is && each.why === "As you settled it." && sharesMost(each, headings.length, key),
  );
  if (moved) {
    const sentence = `The sheet "${moved.sheet}" is read as "${sheet}" was: its headings are the same.`;
    return [{ kind: "sheet moved", sheet: moved.sheet, heading: "", sentence }];
  }
  return [
    { kind: "sheet gone", sheet, heading: "", sentence: `The sheet "${sheet}" (${is}) is not in this workbook.` },
  ];
}

function sharesMost(each: SheetTaken, count: number, key: string): boolean {
  const shared = each.headings.filter(({ heading }) => key.split("|").includes(keyOf(heading))).length;
  return shared * 2 >= count;
}

function sheetChanges(sheet: SheetTaken, before: readonly SheetDecision[]): Change[] {
  const own = before.find((each) => isOf(each, sheet));
  if (!own) {
    const isNew = sheet.is !== "not used" && sheet.why !== "As you settled it.";
    const sentence = `The sheet "${sheet.sheet}" is new. It is taken for ${sheet.is}: check that.`;
    return isNew ? [{ kind: "sheet new", sheet: sheet.sheet, heading: "", sentence }] : [];
  }
  const was = new Set(own.headings.map(({ heading }) => keyOf(heading)));
  const is = new Set(sheet.headings.map(({ heading }) => keyOf(heading)));
  const gone = own.headings.filter((each) => !isVirtual(each) && !is.has(keyOf(each.heading)) && isUsed(each));
  const fresh = sheet.headings.filter(({ heading, cell }) => cell !== "" && !was.has(keyOf(heading)));
  const rowMoved = own.headerRows.length > 0 && own.headerRows[0] !== sheet.headerRows[0];
  const first = sheet.headings[0];
  return [
    ...(rowMoved && first ? [moved(sheet, own)] : []),
    ...gone.map(({ heading }): Change => ({
      kind: "heading gone",
      sheet: sheet.sheet,
      heading,
      sentence: `The heading "${heading}" is no longer on "${sheet.sheet}". Say which heading took its place, or that there is none.`,
    })),
    ...fresh.map(({ heading, means }): Change => ({
      kind: "heading new",
      sheet: sheet.sheet,
      heading,
      sentence: `The heading "${heading}" on "${sheet.sheet}" is new. It is ${means ? `taken for ${means}` : "not used"}.`,
    })),
  ];
}

function isUsed(each: SheetDecision["headings"][number]): boolean {
  return !("means" in each) || each.means !== null;
}

function moved(sheet: SheetTaken, own: SheetDecision): Change {
  return {
    kind: "heading moved",
    sheet: sheet.sheet,
    heading: "",
    sentence: `The headings of "${sheet.sheet}" moved from row ${own.headerRows[0] ?? 0} to row ${sheet.headerRows[0] ?? 0}. They are read there.`,
  };
}
