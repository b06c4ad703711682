import type { DateSystem } from "../../age/serial";
import type { Settings } from "../../settings/settings";
import type { Block } from "../headings/block";
import type { WordMeaning } from "../corrections/settled";
import type { FindingCollector } from "../findings/collector";
import type { DateOrder } from "../cells/date-codes";
import { type DateColumn, readDateColumn } from "../cells/date-column";
import type { TableName } from "../tables/spec";

/** What every reader of a table needs. */
export interface Reading {
  readonly dateSystem: DateSystem;
  readonly settings: Settings;
  readonly findings: FindingCollector;
  readonly decided: Decided;
}

/** The repair decisions in force, ready to be asked. Each answer marks its decision as used. */
export interface Decided {
  /** The child or skill that a key stands for; the key itself where nothing was settled. */
  child(key: string): string;
  skill(key: string): string;
  order(table: TableName, columnKey: string): DateOrder | null;
  /** Whether years of two digits are read as 2000 to 2099. */
  readsShortYears(): boolean;
  /** What a word for a result stands for: null where it is not settled yet, undefined where nothing is said of it. */
  word(key: string): WordMeaning | null | undefined;
  /** What a word among the areas of referrals stands for: null where it is not settled yet, undefined where nothing is said of it. */
  area(key: string): string | null | undefined;
  /** How a value of a column of Children is to be written; undefined where nothing is said of it. */
  name(heading: string, key: string): string | undefined;
}

const MOST_SINGLE_NOTES = 20;

/** How a date column is read: `strict` where a cell that cannot be read leaves its row out. */
export interface DateReading {
  readonly strict: boolean;
  readonly passOver?: Uint8Array;
}

/** Reads a date column of a block, with the findings that are about the column rather than a cell. */
export function readDates(
  reading: Reading,
  block: Block,
  key: string,
  column: number,
  { strict, passOver }: DateReading,
): DateColumn {
  const dates = readDateColumn(block.grid, column, block.rows, {
    system: block.dateSystem ?? reading.dateSystem,
    decided: reading.decided.order(block.table, key),
    monthFirst: reading.settings.monthFirst,
    shortYears: reading.decided.readsShortYears(),
    ...(passOver ? { passOver } : {}),
  });
  const mild = strict ? {} : ({ severity: "warning" } as const);
  if (dates.swapped) reading.findings.range("date-column-swapped", block, below(block, column), mild);
  noteTimes(reading, block, column, dates);
  return dates;
}

function noteTimes(reading: Reading, block: Block, column: number, dates: DateColumn): void {
  if (dates.timed.length > MOST_SINGLE_NOTES) {
    reading.findings.range("date-time-dropped", block, below(block, column), {
      advice: `Nothing to do: only the day counts. ${dates.timed.length} cells of this column have a time.`,
    });
    return;
  }
  dates.timed.forEach((i) => reading.findings.cell("date-time-dropped", block, block.rows[i] as number, column));
}

function below(block: Block, column: number) {
  return { top: block.firstRow, bottom: block.range.bottom, left: column, right: column };
}
