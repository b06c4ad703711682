import type { Table } from "../../../tables/table";
import type { Report } from "../../report";
import { ageWhenMetSentences } from "./age-when-met";
import { metByBandLeftSentences, metByBandSentences } from "./met-by-band";
import { agreementSentences, reachedByAgeSentences, sinceEnrolmentSentences, skillStatusSentences } from "./others";

type Sentences = (table: Table, report: Report) => readonly string[];

/** What each table says, most important first, every percent with its numbers. */
const SENTENCES: Readonly<Record<string, Sentences>> = {
  "met-by-band": metByBandSentences,
  "met-by-band-left": metByBandLeftSentences,
  "reached-by-age": reachedByAgeSentences,
  "since-enrolment": sinceEnrolmentSentences,
  "age-when-met": ageWhenMetSentences,
  "skill-status": skillStatusSentences,
  agreement: agreementSentences,
};

/** The first one is the title of the table's sheet. A table without sentences of its own keeps its title. */
export function sentencesOf(table: Table, report: Report): readonly string[] {
  const sentences = Object.hasOwn(SENTENCES, table.id) ? SENTENCES[table.id] : undefined;
  const said = table.rows.length === 0 ? [] : (sentences?.(table, report) ?? []);
  return said.length > 0 ? said : [table.rows.length === 0 ? `${table.title}: there is nobody to count` : table.title];
}
