import { isoInWords } from "../../release/words/days";
import type { WordsContext } from "../../release/words/words-context";
import type { PrintOut } from "../../workbook/sheets";
import { TOOL_NAME } from "../report";
import { VERSION } from "../version";

/** The foot of every printed page says the day and the rule. */
export function releasePage({ asOf, rule }: Pick<WordsContext, "asOf" | "rule">): PrintOut {
  const footer = `${TOOL_NAME} ${VERSION}, as of ${isoInWords(asOf)}, under the rule of at least ${rule.minimumCell}`;
  return { landscape: true, fit: "one page wide", footer };
}
