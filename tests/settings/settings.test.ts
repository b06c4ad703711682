import fc from "fast-check";
import { dayFromIso, isoOf } from "../../src/age/day";
import { echoSettings, parseSettings, SETTING_NAMES, type Settings, usualSettings } from "../../src/settings/settings";

const day = (iso: string) => dayFromIso(iso) as number;

function settings(entries: Record<string, unknown>, system: 1900 | 1904 = 1900): Settings {
  const parsed = parseSettings(entries, system);
  if ("messages" in parsed) throw new Error(parsed.messages.join(" "));
  return parsed.settings;
}

function messages(entries: Record<string, unknown>): readonly string[] {
  const parsed = parseSettings(entries, 1900);
  return "messages" in parsed ? parsed.messages : [];
}

test("nothing said gives the usual settings", () => {
  expect(settings({})).toEqual(usualSettings);
  expect(settings({ asOf: 0, from: 0, enteredBy: 0 })).toEqual(usualSettings);
  expect(settings({ edges: "", level: null, by: [], correctUntil: " " })).toEqual(usualSettings);
});

test.each([
  ["2026-09-30", "2026-07-01"],
  ["2026-01-01", "2026-01-01"],
  ["2024-02-29", "2024-01-01"],
  ["2025-12-31", "2025-10-01"],
])("the period of %s begins on %s, the first day of its quarter", (asOf, from) => {
  expect(isoOf(settings({ asOf }).from as number)).toBe(from);
});

test("dates are ISO text or serial numbers of either date system", () => {
  // ECMA-376 Part 1, 18.17.4.1: serial 1 of the 1900 system is January 1, 1900; the 1904 system counts from January 1, 1904.
  expect(settings({ enteredBy: 1 }).enteredBy).toBe(day("1900-01-01"));
  expect(settings({ enteredBy: 1 }, 1904).enteredBy).toBe(day("1904-01-02"));
  expect(settings({ asOf: "2026-09-30", from: "2026-08-01" })).toMatchObject({
    asOf: day("2026-09-30"),
    from: day("2026-08-01"),
  });
});

test.each([
  ["24", { belowDays: 259, untilMonths: 24, untilAge: "chronological" }],
  [36, { belowDays: 259, untilMonths: 36, untilAge: "chronological" }],
  ["24 corrected", { belowDays: 259, untilMonths: 24, untilAge: "corrected" }],
  ["24 months corrected", { belowDays: 259, untilMonths: 24, untilAge: "corrected" }],
  ["Always", { belowDays: 259, untilMonths: Infinity, untilAge: "chronological" }],
])("correctUntil %s", (correctUntil, rule) => {
  expect(settings({ correctUntil }).correction).toEqual(rule);
});

test.each([
  ["37+0", 259],
  ["32+6", 230],
  ["never", 0],
  [34, 238],
])("correctBelow %s is %i days", (correctBelow, belowDays) => {
  expect(settings({ correctBelow }).correction.belowDays).toBe(belowDays);
});

test("lists are arrays or text with commas", () => {
  expect(settings({ edges: "0, 6,12" }).edges).toEqual([0, 6, 12]);
  expect(settings({ edges: [0, "6", 12.5] }).edges).toEqual([0, 6, 12.5]);
  expect(settings({ by: "Site, Therapist" }).by).toEqual(["Site", "Therapist"]);
  expect(settings({ by: ["Site"] }).by).toEqual(["Site"]);
});

test.each([
  [{ asOf: "30/09/2026" }, "asOf must be a date such as 2026-09-30."],
  [{ asOf: "2026-02-30" }, "asOf must be a date such as 2026-09-30."],
  [{ asOf: 60 }, "asOf must be a date such as 2026-09-30."],
  [{ recheck: 0 }, "recheck must be a whole number of days from 1 to 3650, or none."],
  [{ recheck: "ninety" }, "recheck must be a whole number of days from 1 to 3650, or none."],
  [{ level: 95 }, "level must be a share from 0.5 to 0.999, such as 0.95."],
  [{ edges: "6, 3" }, "edges must be two or more rising ages in months from 0 to 216, such as 0, 3, 6, 9, 12."],
  [{ edges: "6,,9" }, "edges must be two or more rising ages in months from 0 to 216, such as 0, 3, 6, 9, 12."],
  [{ correctBelow: "41+0" }, 'correctBelow must be a gestation from 20+0 to 40+0, such as 37+0, or "never".'],
  [
    { correctUntil: "sometimes" },
    'correctUntil must be months from 0 to 72, such as 24, months of corrected age such as "24 corrected", or "always".',
  ],
  [{ releaseMethod: "blur" }, "releaseMethod must be hide, round or ranges."],
  [{ wholeGroups: "maybe" }, "wholeGroups must be flag or hide."],
  [{ gestationDecimals: "months" }, "gestationDecimals must be days or weeks."],
  [{ metDates: "both" }, "metDates must be seen or exact."],
  [{ monthFirst: "perhaps" }, "monthFirst must be yes or no."],
  [{ seed: -1 }, "seed must be a whole number from 0 to 4294967295."],
  [{ scanMonths: 1 }, "scanMonths must be a whole number of months from 2 to 120."],
  [{ minimumCell: 4 }, "minimumCell must be a whole number of children from 5 (the floor) to 1000."],
  [{ minimumCell: 11, floor: 20 }, "minimumCell must be a whole number of children from 20 (the floor) to 1000."],
  [{ asOf: "2026-01-01", from: "2026-01-02" }, "from must be a date on or before asOf."],
  [{ "as-of": "2026-01-01" }, 'There is no setting called "as-of"; did you mean asOf?'],
])("%j is refused in one sentence", (entries, message) => {
  expect(messages(entries)).toEqual([message]);
});

test("every fault has its sentence", () => {
  expect(messages({ asOf: "x", level: 2, seed: 1.5 })).toHaveLength(3);
});

test("a lower floor lets the threshold down, and no further", () => {
  expect(settings({ minimumCell: 5 }).minimumCell).toBe(5);
  expect(settings({ minimumCell: 3, floor: 3 }).minimumCell).toBe(3);
});

test("hostile names are only names", () => {
  const entries = JSON.parse('{"__proto__": {"asOf": "2026-09-30"}, "constructor": 1}') as Record<string, unknown>;
  expect(messages(entries)).toHaveLength(2);
  expect(({} as Record<string, unknown>)["asOf"]).toBeUndefined();
});

test("the echo has every setting under its own name, and parses to the same settings", () => {
  const entries = fc.record(
    {
      asOf: fc.integer({ min: 40_000, max: 50_000 }),
      enteredBy: fc.integer({ min: 40_000, max: 50_000 }),
      correctBelow: fc.constantFrom("37+0", "never", "34+3"),
      correctUntil: fc.constantFrom(24, "24 corrected", "always", 36, "18.5"),
      edges: fc.constantFrom([0, 6], "0,3,6.5"),
      recheck: fc.integer({ min: 1, max: 3650 }),
      level: fc.constantFrom(0.9, "0.99"),
      by: fc.constantFrom("Site", ["Site", "Therapist"]),
      minimumCell: fc.integer({ min: 5, max: 30 }),
      releaseMethod: fc.constantFrom("hide", "round", "ranges"),
      wholeGroups: fc.constantFrom("flag", "hide"),
      gestationDecimals: fc.constantFrom("days", "weeks"),
      metDates: fc.constantFrom("seen", "exact"),
      monthFirst: fc.constantFrom(true, "no"),
      seed: fc.integer({ min: 0 }),
    },
    { requiredKeys: [] },
  );
  fc.assert(
    fc.property(entries, (given) => {
      const first = settings(given);
      const echo = echoSettings(first);
      expect(Object.keys(echo)).toEqual(SETTING_NAMES);
      expect(JSON.parse(JSON.stringify(echo))).toEqual(echo);
      expect(settings(echo)).toEqual(first);
    }),
  );
});
