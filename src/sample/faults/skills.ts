import type { CellOut } from "../../workbook/sheets";
import type { SampleTable } from "../tables";
import { columnsOf, type Draft, type DraftRow, fault, soundRows, spread } from "./draft";

const COLUMN = { skill: 0, area: 2, opens: 3, closes: 4, basis: 5, share: 6, follows: 7 } as const;
type Change = Partial<Record<keyof typeof COLUMN, CellOut>>;

/** Skills as an Excel table, with faults of windows, shares and of the skill that another follows. */
export function faultySkills(table: SampleTable): Draft {
  return {
    name: "Skills",
    columns: columnsOf(table.headings.length, []),
    above: [],
    headings: [{ cells: table.headings }],
    rows: spread(soundRows(table), faultyRows()),
    excelTable: true,
  };
}

function own(id: string, label: string, change: Change, ...faults: NonNullable<DraftRow["faults"]>): DraftRow {
  const cells: CellOut[] = [
    id,
    label,
    "cognitive",
    null,
    24,
    null,
    null,
    null,
    null,
    null,
    "the program's own, no source",
  ];
  for (const [key, value] of Object.entries(change)) cells[COLUMN[key as keyof typeof COLUMN]] = value as CellOut;
  return { cells, faults };
}

function faultyRows(): DraftRow[] {
  const at = COLUMN;
  return [
    own(
      "turn-page",
      "Turns the leaves of a board book",
      { share: 75 },
      fault(at.share, "share-as-percent", "75 in place of 0.75", "Left out."),
    ),
    own(
      "pour",
      "Pours sand from cup to cup",
      { opens: 20, closes: 14 },
      fault(at.closes, "window-empty", "window that closes before it opens", "Left out."),
    ),
    own(
      "sort",
      "Sorts big from small",
      { follows: "sort-by-sight" },
      fault(at.follows, "follows-unknown", "follows a skill that is not there", "Read as blank."),
    ),
    own("sing", "Joins in a song", { share: -0.5 }, fault(at.share, "share-illegal", "share below 0", "Left out.")),
    own(
      "hum",
      "Hums along",
      { basis: "adjusted" },
      fault(at.basis, "age-basis-unknown", "word that is no age basis", "Left out."),
    ),
    own(
      "hide",
      "Hides and waits",
      { closes: 300 },
      fault(at.closes, "month-illegal", "weeks in place of months", "Left out."),
    ),
    own(
      "sweep",
      "Sweeps leaves",
      { closes: "two years" },
      fault(at.closes, "number-unreadable", "words for a number", "Left out."),
    ),
    own("dig", "Digs with a spade", { area: null }, fault(at.area, "cell-blank", "no area", "Left out.")),
    own(
      "sort ",
      "Sorts by colour",
      {},
      fault(at.skill, "skill-twice", "id that stands there twice", "The first row is used."),
    ),
    own(
      "swing",
      "Sits on a swing",
      { follows: "slide" },
      fault(at.follows, "follows-circle", "skills that follow in a circle", "Read as blank."),
    ),
    own(
      "slide",
      "Comes down a slide",
      { follows: "swing" },
      fault(at.follows, "follows-circle", "skills that follow in a circle", "Read as blank."),
    ),
  ];
}
