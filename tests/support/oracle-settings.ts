import { parseSettings, type Settings } from "../../src/settings/settings";
import type { OracleSettings } from "../oracle/input";

/** The settings of the second implementation as those of the program. */
export function settingsFor({
  asOf,
  from,
  enteredBy,
  belowDays,
  untilMonths,
  edges,
  recheckDays,
  disagreement,
  by,
}: OracleSettings): Settings {
  const parsed = parseSettings(
    {
      asOf,
      ...(from === null ? {} : { from }),
      ...(enteredBy === null ? {} : { enteredBy }),
      correctBelow: `${Math.floor(belowDays / 7)}+${belowDays % 7}`,
      correctUntil: untilMonths,
      edges,
      recheck: recheckDays === Infinity ? "none" : recheckDays,
      disagreement,
      by,
    },
    1900,
  );
  if ("messages" in parsed) throw new Error(parsed.messages.join(" "));
  return parsed.settings;
}
