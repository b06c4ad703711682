import { z } from "zod";
import { TERM_DAYS } from "../age/correction";
import { type Day, dayFromIso } from "../age/day";
import { parseGestation } from "../age/gestation";
import { type DateSystem, dayFromSerial } from "../age/serial";
import type { CorrectionRule } from "../age/correction";

/** A cell of a settings sheet, an option of the command line or a field of the pane. */
type Entry = unknown;

/**
 * The schema of the settings as they are written: each takes text, numbers or lists, and refuses with one sentence that
 * names the setting and what is legal. Blank means left out.
 */
export function settingsSchema(system: DateSystem) {
  const date = (name: string) =>
    entry(`${name} must be a date such as 2026-09-30`, (value) => dayOfEntry(value, system), isBlankDate);
  return z.strictObject({
    asOf: date("asOf"),
    from: date("from"),
    enteredBy: date("enteredBy"),
    correctBelow: entry('correctBelow must be a gestation from 20+0 to 40+0, such as 37+0, or "never"', belowOfEntry),
    correctUntil: entry(
      'correctUntil must be months from 0 to 72, such as 24, months of corrected age such as "24 corrected", or "always"',
      untilOfEntry,
    ),
    edges: entry("edges must be two or more rising ages in months from 0 to 216, such as 0, 3, 6, 9, 12", edgesOfEntry),
    recheck: whole("recheck", 1, 3650, "days"),
    level: entry("level must be a share from 0.5 to 0.999, such as 0.95", (value) => within(value, 0.5, 0.999)),
    by: entry("by must be one or more headings of Children, such as Site", listOfEntry),
    minimumCell: whole("minimumCell", 1, 1000, "children"),
    floor: whole("floor", 1, 1000, "children"),
    releaseMethod: word("releaseMethod", ["hide", "round", "ranges"]),
    wholeGroups: word("wholeGroups", ["flag", "hide"]),
    scanMonths: whole("scanMonths", 2, 120, "months"),
    gestationDecimals: word("gestationDecimals", ["days", "weeks"]),
    metDates: word("metDates", ["seen", "exact"]),
    seed: whole("seed", 0, 2 ** 32 - 1),
    monthFirst: entry("monthFirst must be yes or no", yesNoOfEntry),
  });
}

export type SettingName = keyof ReturnType<typeof settingsSchema>["shape"];
export type SettingEntries = z.infer<ReturnType<typeof settingsSchema>>;

/** One setting: undefined where it is left out or blank, else what `read` gives; null from `read` is a refusal. */
function entry<T>(message: string, read: (value: Entry) => T | null, isLeftOut = isBlank) {
  return z.unknown().transform((value, context): T | undefined => {
    if (isLeftOut(value)) return undefined;
    const result = read(typeof value === "string" ? value.normalize("NFKC").trim() : value);
    if (result !== null) return result;
    context.addIssue({ code: "custom", message: `${message}.` });
    return z.NEVER;
  });
}

function whole(name: string, least: number, most: number, unit = "") {
  const words = `${name} must be a whole number${unit === "" ? "" : ` of ${unit}`} from ${least} to ${most}`;
  return entry(words, (value) => {
    const number = within(value, least, most);
    return number !== null && Number.isInteger(number) ? number : null;
  });
}

function word<const T extends string>(name: string, words: readonly T[]) {
  const list = `${words.slice(0, -1).join(", ")} or ${words.at(-1)}`;
  return entry(
    `${name} must be ${list}`,
    (value) => words.find((each) => each === String(value).toLowerCase()) ?? null,
  );
}

function isBlank(value: Entry): boolean {
  if (typeof value === "string") return value.trim() === "";
  return value === undefined || value === null || (Array.isArray(value) && value.length === 0);
}

/** Some hosts hand an empty cell over as 0, and no date is 0. */
function isBlankDate(value: Entry): boolean {
  return isBlank(value) || value === 0;
}

function numberOf(value: Entry): number | null {
  if (typeof value === "number") return Number.isFinite(value) ? value : null;
  return typeof value === "string" && /^[+-]?(\d+\.?\d*|\.\d+)$/.test(value) ? Number(value) : null;
}

function within(value: Entry, least: number, most: number): number | null {
  const number = numberOf(value);
  return number !== null && number >= least && number <= most ? number : null;
}

function dayOfEntry(value: Entry, system: DateSystem): Day | null {
  if (typeof value === "number") return value >= 1 ? dayFromSerial(value, system) : null;
  return typeof value === "string" ? dayFromIso(value) : null;
}

/** Days of gestation below which a child is corrected; 0 corrects nobody. */
function belowOfEntry(value: Entry): number | null {
  if (typeof value === "string" && value.toLowerCase() === "never") return 0;
  if (typeof value !== "string" && typeof value !== "number") return null;
  const gestation = parseGestation(value, null);
  return gestation.kind === "days" && gestation.days <= TERM_DAYS ? gestation.days : null;
}

function untilOfEntry(value: Entry): Pick<CorrectionRule, "untilMonths" | "untilAge"> | null {
  const match = /^(\S+?)\s*(?:months?)?\s*(corrected)?$/i.exec(String(value));
  if (String(value).toLowerCase() === "always") return { untilMonths: Infinity, untilAge: "chronological" };
  const untilMonths = within(match?.[1], 0, 72);
  return untilMonths === null ? null : { untilMonths, untilAge: match?.[2] ? "corrected" : "chronological" };
}

function edgesOfEntry(value: Entry): number[] | null {
  const items = Array.isArray(value)
    ? value.filter((each) => !isBlank(each))
    : String(value)
        .split(/[,;]/)
        .map((each) => each.trim());
  const edges = items.map((each) => within(each, 0, 216));
  const rising = edges.every((edge, i) => edge !== null && (i === 0 || edge > (edges[i - 1] as number)));
  return rising && edges.length >= 2 ? (edges as number[]) : null;
}

function listOfEntry(value: Entry): string[] | null {
  const items = Array.isArray(value) ? value : String(value).split(",");
  const texts = items.map((each) => String(each ?? "").trim()).filter((each) => each !== "");
  return texts.length > 0 ? texts : null;
}

function yesNoOfEntry(value: Entry): boolean | null {
  if (typeof value === "boolean") return value;
  const key = String(value).toLowerCase();
  if (["yes", "true", "1"].includes(key)) return true;
  return ["no", "false", "0"].includes(key) ? false : null;
}
