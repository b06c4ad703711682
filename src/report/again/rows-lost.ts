import { counted, plural } from "../../words/numbers";
import type { Provenance } from "../report";
import type { MadeFrom } from "./provenance-line";

/**
 * Rows that the last report had and this workbook has not, in sentences. Records of a program grow: fewer rows are
 * usually a filter left on, or a sheet or file that was forgotten.
 */
export function rowsLost(last: MadeFrom, now: Pick<Provenance, "records" | "sites">): string[] {
  return [...tablesLost(last, now), ...sitesLost(last, now)];
}

const LOOK = "Check for a filter left on, or a sheet or file that was forgotten.";

function tablesLost(last: MadeFrom, now: Pick<Provenance, "records">): string[] {
  return last.records.flatMap(({ table, rows }) => {
    const today = now.records.find((each) => each.table === table);
    if (!today) return [`${table} is gone; the last report had ${plural(rows, "row", "rows")}. ${LOOK}`];
    if (today.rows >= rows) return [];
    return [`${table} has ${plural(today.rows, "row", "rows")}; the last report had ${counted(rows)}. ${LOOK}`];
  });
}

function sitesLost(last: MadeFrom, now: Pick<Provenance, "sites">): string[] {
  return last.sites.flatMap(({ site, observations }) => {
    const name = site === "" ? "Site not recorded" : `Site ${site}`;
    const today = now.sites.find((each) => each.site === site);
    if (!today)
      return [`${name} is gone; the last report had ${plural(observations, "observation", "observations")}. ${LOOK}`];
    if (today.observations >= observations) return [];
    const have = plural(today.observations, "observation", "observations");
    return [`${name} has ${have}; the last report had ${counted(observations)}. ${LOOK}`];
  });
}
