import { isoOf } from "../../src/age/day";
import { parseSettings } from "../../src/settings/settings";
import type { Settings } from "../../src/settings/settings";
import { currentDateSystem } from "../date-system";
import { invalid } from "../failure";
import { columnOf, type InCell, isBlank, isEmpty, isLeftOut, rangeOf, singleOf } from "./cells";
import { dayFrom } from "./values";

/**
 * The settings of a table function: a range of names and values, with the as-of date and the grouping of the function's
 * own arguments before those of the range.
 */
export function settingsOf(asOf: unknown, settings: unknown, by?: unknown): Settings {
  return settingsFrom(settings, {
    asOf: isoOf(dayFrom(singleOf(asOf, "asOf"), "asOf")),
    ...(by === undefined || isLeftOut(by) ? {} : { by: namesOf(by) }),
  });
}

/** The settings of a range of names and values, what the function's own arguments say before them. */
export function settingsFrom(settings: unknown, own: Readonly<Record<string, unknown>>): Settings {
  const parsed = parseSettings({ ...entriesOf(settings), ...own }, currentDateSystem());
  if ("messages" in parsed) throw invalid(`settings: ${parsed.messages.join(" ")}`);
  return parsed.settings;
}

/** A value of 0 is an empty cell, so that its setting is left out. */
function entriesOf(settings: unknown): Readonly<Record<string, InCell>> {
  if (isLeftOut(settings)) return {};
  const rows = rangeOf(settings, "settings").filter((row) => !row.every(isEmpty));
  const entries = new Map<string, InCell>();
  for (const row of rows) {
    const [name, value] = row;
    if (row.length !== 2 || typeof name !== "string") {
      throw invalid("settings: give a range of two columns, the names and the values.");
    }
    if (entries.has(name.trim())) throw invalid(`settings: ${name.trim()} is there twice. Clear one of the two.`);
    entries.set(name.trim(), valueOf(name.trim(), value ?? null));
  }
  return Object.fromEntries(entries);
}

function valueOf(name: string, value: InCell): InCell {
  if (value === 0 && name === "correctUntil") {
    throw invalid('settings: correctUntil is 0. Clear its name for 24, or set correctBelow to "never".');
  }
  return isEmpty(value) ? null : value;
}

function namesOf(by: unknown): string[] {
  const cells = columnOf(by, "by").filter((cell) => !isEmpty(cell));
  return cells.flatMap((cell) => String(cell).split(",")).filter((name) => !isBlank(name));
}
