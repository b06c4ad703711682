import type { Table, TableId } from "../../../tables/table";
import type { Report } from "../../report";
import { ageWhenMetSentences } from "./age-when-met";
import { expectedByNowSentences } from "./expected-by-now";
import { metByBandLeftSentences, metByBandSentences } from "./met-by-band";
import { ratingsSentences } from "./ratings";
import { referralScanSentences } from "./referral-scan";
import { referralStepsSentences } from "./referral-steps";
import { referralsSentences } from "./referrals";
import { trendSentences } from "./trend";
import { whatChangedSentences } from "./what-changed";
import { agreementSentences, reachedByAgeSentences, sinceEnrollmentSentences, skillStatusSentences } from "./others";

type Sentences = (table: Table, report: Report) => readonly string[];

/** What each table says, most important first, every percent with its numbers. */
const SENTENCES: Readonly<Record<TableId, Sentences>> = {
  "expected-by-now": expectedByNowSentences,
  "met-by-band": metByBandSentences,
  "met-by-band-left": metByBandLeftSentences,
  "reached-by-age": reachedByAgeSentences,
  "since-enrollment": sinceEnrollmentSentences,
  "age-when-met": ageWhenMetSentences,
  referrals: referralsSentences,
  "referral-scan": referralScanSentences,
  "referral-steps": referralStepsSentences,
  ratings: ratingsSentences,
  trend: trendSentences,
  "skill-status": skillStatusSentences,
  agreement: agreementSentences,
  "what-changed": whatChangedSentences,
  "what-changed-children": titleAlone,
  caseload: titleAlone,
  "recheck-plan": titleAlone,
};

/** Said of a table without rows, where nobody to count would be the wrong words. */
const EMPTY: Readonly<Partial<Record<TableId, string>>> = {
  "referral-scan": "No place and months had more referrals than expected",
  ratings: "No outcome was rated",
  agreement: "No two named observers checked the same skill of a child on one day",
};

/** The first one is the title of the table's sheet. A table without sentences of its own keeps its title. */
export function sentencesOf(table: Table, report: Report): readonly string[] {
  if (table.rows.length === 0) return [EMPTY[table.id] ?? `${table.title}: no child to count`];
  const said = SENTENCES[table.id](table, report);
  return said.length > 0 ? said : [table.title];
}

function titleAlone({ title }: Table): readonly string[] {
  return [title];
}
