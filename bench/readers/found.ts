/** What a reader found: enough to tell that all three read the same. */
export interface Found {
  readonly rows: number;
  /** The sum of the dates, as serial numbers. */
  readonly dates: number;
  readonly lastChild: string;
}

/** Dates stand in the third column. */
export const DATE_COLUMN = 2;
