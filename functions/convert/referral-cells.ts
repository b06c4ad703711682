import { isoOf } from "../../src/age/day";
import { NO_DAY } from "../../src/records/records";
import type { TableContext } from "../../src/tables/context";
import { referrals as referralsTable } from "../../src/tables/referrals";
import type { AnswerCell } from "../answer";
import { invalid, notEstimable } from "../failure";
import { singleOf } from "./cells";
import { contextOf } from "./records";
import { settingsFrom } from "./settings";
import { tableCells } from "./table-cells";
import { dayFrom } from "./values";

export interface ReferralArguments {
  readonly children: unknown;
  readonly referrals: unknown;
  readonly from: unknown;
  readonly to: unknown;
  readonly settings: unknown;
}

/** Headings alone: the function is given neither table, and areas are then the six, and those of the referrals. */
const NO_OBSERVATIONS = [["Child", "Skill", "Date", "Result"]];
const NO_SKILLS = [["Skill", "Label", "Area", "Opens", "Closes"]];

export function referralContext({ children, referrals, from, to, settings }: ReferralArguments): TableContext {
  const period = {
    from: isoOf(dayFrom(singleOf(from, "from"), "from")),
    asOf: isoOf(dayFrom(singleOf(to, "to"), "to")),
  };
  if (period.from > period.asOf) throw invalid("from comes after to: exchange the two.");
  const tables = { children, observations: NO_OBSERVATIONS, skills: NO_SKILLS, referrals };
  const context = contextOf(tables, settingsFrom(settings, period));
  if (context.records.referrals === null)
    throw invalid("referrals: give the table with its headings in the first row.");
  if (context.cohort.enrolments.enrolled.every((day) => day === NO_DAY)) {
    throw invalid("children: no row has a date of enrollment, so nobody is in the program. Add the column Enrolled.");
  }
  return context;
}

/** Table 4, its header row first. Where nothing is expected there is no ratio; areas and sources expect nothing at all. */
export function referralCells(context: TableContext): AnswerCell[][] {
  const table = referralsTable(context);
  const expected = table.columns.findIndex(({ key }) => key === "expected");
  const nothing = notEstimable("Nothing is expected here: there is nothing to compare with.");
  return tableCells(table).map((row) =>
    row[expected] === 0 ? row.map((cell, at) => (cell === null && at > expected ? nothing : cell)) : row,
  );
}
