import type { Records } from "../../records/records";
import type { PreparedRelease } from "../../release/prepared";
import { type KnownNames, knownNames } from "../../release/text-check/people";
import type { WordsContext } from "../../release/words/words-context";
import type { Settings } from "../../settings/settings";
import { allowedDates } from "./fine-dates";
import { type PrivateTexts, privateTextsOf } from "./private-texts";

/** What the words of a release need beside its figures. */
export function contextOf(
  { asOf, from, rule }: PreparedRelease,
  { level }: Settings,
  { skills }: Pick<Records, "skills">,
  pictured: readonly string[] | null = null,
): WordsContext {
  return { asOf, from, rule, level, skills, ...(pictured && { pictured }) };
}

export interface OutputRules {
  readonly privateTexts: PrivateTexts;
  readonly allowedDates: readonly string[];
  readonly asOf: string;
  /** What a text that goes along may not name. */
  readonly names: KnownNames;
}

/** What every file of a release is held against before it is saved. */
export function rulesOf({ asOf, from, tables }: PreparedRelease, { by }: Settings, records: Records): OutputRules {
  const sources = records.skills.map(({ basis }) => basis);
  return {
    privateTexts: privateTextsOf(records, by, tables),
    allowedDates: allowedDates([asOf, from], sources),
    asOf,
    names: knownNames(records, by),
  };
}
