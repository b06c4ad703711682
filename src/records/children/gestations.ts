import {
  decimalEvidence,
  type Gestation,
  type GestationDecimals,
  gestationFromDueDate,
  gestationFromWeeksEarly,
  isBareDecimal,
  parseGestation,
} from "../../age/gestation";
import type { Block } from "../headings/block";
import type { EnrolmentRow } from "./enrolment-row";
import type { Reading } from "../rows/reading";

/** What the gestations of the children come to: days, 0 where a child is not to be corrected. */
export interface Gestations {
  readonly days: Int16Array;
  readonly notRecorded: number;
}

/** Reads the gestation of every child; a bare decimal is read as its whole column says, or as the settings do. */
export function gestationsOf(
  reading: Reading,
  blocks: readonly { block: Block }[],
  byChild: readonly (readonly EnrolmentRow[])[],
): Gestations {
  const rows = byChild.flat();
  const decimals = new Map(
    blocks.map(({ block }) => [
      block,
      decimalsOf(
        reading,
        rows.filter((each) => each.block === block),
      ),
    ]),
  );
  let notRecorded = 0;
  const days = Int16Array.from(byChild, (own) => {
    const read = own.map((each) => gestationOf(each, decimals.get(each.block) ?? null));
    own.forEach((each, i) => listProblem(reading, each, read[i] as Gestation));
    if (read.every((each) => each.kind === "blank")) notRecorded += 1;
    return settled(reading, own, read);
  });
  return { days, notRecorded };
}

function decimalsOf(reading: Reading, rows: readonly EnrolmentRow[]): GestationDecimals | null {
  const bare = rows.map((each) => String(each.value.gestation.cell ?? "")).filter(isBareDecimal);
  return bare.some((text) => decimalEvidence(text) === "weeks") ? "weeks" : reading.settings.gestationDecimals;
}

/** As it is recorded; else from the due date, or from the weeks early. */
function gestationOf(each: EnrolmentRow, decimals: GestationDecimals | null): Gestation {
  const { cell, isDate } = each.value.gestation;
  if (isDate) return { kind: "illegal" };
  const recorded = parseGestation(cell, decimals);
  if (recorded.kind !== "blank") return recorded;
  const { birth, dueDate } = each.value;
  if (dueDate !== null && birth !== null) return gestationFromDueDate(birth, dueDate);
  return gestationFromWeeksEarly(each.value.weeksEarly.cell);
}

/** The column that says how early the child was born. */
function columnOf({ value, block }: EnrolmentRow): string {
  if (value.gestation.cell !== null) return "gestation";
  return value.dueDate !== null && block.columns.has("dueDate") ? "dueDate" : "weeksEarly";
}

function listProblem(reading: Reading, each: EnrolmentRow, gestation: Gestation): void {
  if (gestation.kind !== "illegal" && gestation.kind !== "undecided") return;
  const column = columnOf(each);
  const rule =
    FROM_OTHERS.get(column) ?? (each.value.gestation.isDate ? "gestation-is-date" : `gestation-${gestation.kind}`);
  reading.findings.cell(rule, each.block, each.row, each.block.columns.get(column) as number);
}

const FROM_OTHERS = new Map([
  ["dueDate", "due-date-implausible"],
  ["weeksEarly", "weeks-early-illegal"],
]);

/** One gestation a child: a blank in some rows leaves the recorded one; anything unsettled leaves none. */
function settled(reading: Reading, own: readonly EnrolmentRow[], read: readonly Gestation[]): number {
  const given = new Set(read.flatMap((each) => (each.kind === "days" ? each.days : [])));
  if (given.size > 1) {
    own.forEach((each, i) => {
      if (read[i]?.kind !== "days") return;
      reading.findings.cell(
        "gestation-conflict",
        each.block,
        each.row,
        each.block.columns.get(columnOf(each)) as number,
      );
    });
  }
  const unsettled = read.some((each) => each.kind === "illegal" || each.kind === "undecided");
  const [days] = given;
  return given.size === 1 && !unsettled && days !== undefined ? days : 0;
}
