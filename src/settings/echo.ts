import { type Day, isoOf } from "../age/day";
import type { Settings } from "./shape";

/** Plain values under the settings' own names. */
export type SettingsEcho = Readonly<Record<string, string | number | boolean | null | readonly (string | number)[]>>;

/** Every setting as it would be written: dates as ISO text, `correctBelow` as "37+0". Parsing the echo gives the settings again. */
export function echoSettings(settings: Settings): SettingsEcho {
  const { correction } = settings;
  return {
    asOf: iso(settings.asOf),
    from: iso(settings.from),
    enteredBy: iso(settings.enteredBy),
    correctBelow:
      correction.belowDays === 0 ? "never" : `${Math.floor(correction.belowDays / 7)}+${correction.belowDays % 7}`,
    correctUntil: until(settings),
    edges: settings.edges,
    recheck: settings.recheckDays,
    level: settings.level,
    by: settings.by,
    minimumCell: settings.minimumCell,
    floor: settings.floor,
    releaseMethod: settings.releaseMethod,
    wholeGroups: settings.wholeGroups,
    scanMonths: settings.scanMonths,
    gestationDecimals: settings.gestationDecimals,
    metDates: settings.metDates,
    seed: settings.seed,
    monthFirst: settings.monthFirst,
  };
}

function iso(day: Day | null): string | null {
  return day === null ? null : isoOf(day);
}

function until({ correction }: Settings): number | string {
  if (correction.untilMonths === Infinity) return "always";
  return correction.untilAge === "corrected" ? `${correction.untilMonths} corrected` : correction.untilMonths;
}
