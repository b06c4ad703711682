import { failureFrom, inRow } from "../failure";

/** Reads the rows of a function in which one bad row makes the call an error, whose message then names the row. */
export function eachRow<Row, Read>(rows: readonly Row[], read: (row: Row, at: number) => Read): Read[] {
  return rows.map((row, at) => {
    try {
      return read(row, at);
    } catch (thrown) {
      throw inRow(at + 1, failureFrom(thrown));
    }
  });
}
