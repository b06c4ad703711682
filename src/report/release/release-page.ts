import { isoInWords } from "../../release/words/days";
import type { WordsContext } from "../../release/words/words-context";
import type { PrintOut } from "../../workbook/sheets";
import { TOOL_NAME } from "../report";
import { VERSION } from "../version";

/** Every printed page says the rule at its head, and the day at its foot. */
export function releasePage({ asOf, rule }: Pick<WordsContext, "asOf" | "rule">): PrintOut {
  return {
    landscape: true,
    fit: "one page wide",
    header: `Prepared under the rule of at least ${rule.minimumCell}`,
    footer: `${TOOL_NAME} ${VERSION}, as of ${isoInWords(asOf)}`,
  };
}
