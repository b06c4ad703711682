import { type Reading, rowsOf } from "./outsider";
import { childrenName } from "./reached";

/** Children followed on a day are some of those ever followed up to it; how many are gone follows from the two. */
export function readPopulations({ counts, all, onSecret }: Reading): void {
  for (const asOf of new Set(all.map((printed) => printed.asOf))) {
    const tables = all.filter((printed) => printed.asOf === asOf).flatMap((printed) => printed.tables);
    const has = (id: string) => tables.some((table) => table.id === id && rowsOf(table).length > 0);
    if (!has("met-by-band") || !has("reached-by-age")) continue;
    const gone = `ever followed by ${asOf}, and no more`;
    counts.within(["followed", asOf, "", "", "all ages", "children"].join("|"), childrenName({ asOf }, ""), gone);
    onSecret(gone);
  }
}
