/** Each setting against what is asked of all of them, and against what other parts of the program take it for. */
import { SETTING_CATALOGUE, SETTING_NAMES, type SettingDeclaration } from "../../src/settings/catalogue";
import { settingsThatBearOn, usualWritten } from "../../src/settings/settings";
import { initialState, reducePane } from "../../taskpane/state/pane-reducer";
import type { PaneState } from "../../taskpane/state/pane-state";
import type { RecordsFound } from "../../taskpane/worker/records/found";

const declared = (name: (typeof SETTING_NAMES)[number]): SettingDeclaration<unknown, unknown> =>
  SETTING_CATALOGUE[name];

test.each(SETTING_NAMES)("%s: its usual value is legal, and is what it reads again", (name) => {
  const { entry, usual } = declared(name);
  const written = usualWritten(name);
  if (usual === null || (Array.isArray(usual) && usual.length === 0)) return;
  expect(entry.read(written, 1900)).toEqual(usual);
});

test.each(SETTING_NAMES)("%s: says what it does, and what leaving it out means", (name) => {
  const { about, leftOut, choices, usual, bearsOn } = declared(name);
  expect(about).toMatch(/^[A-Z].*\.$/);
  expect(bearsOn.length).toBeGreaterThan(0);
  if (usual === null || (Array.isArray(usual) && usual.length === 0)) expect(leftOut).toMatch(/\w/);
  if (choices) expect(choices[0]?.value).toBe("");
});

test.each(SETTING_NAMES)("%s: each of its choices is legal", (name) => {
  const { entry, choices = [] } = declared(name);
  for (const { value } of choices.slice(1)) expect(entry.read(value, 1900)).not.toBeNull();
});

/** What was read of the records, as far as this test asks. */
const FOUND = { failure: null, groupColumns: [], therapists: null } as unknown as RecordsFound;

test("only what changes what is found in the records makes their findings old; the day of entry does", () => {
  const read: PaneState = { ...initialState, found: FOUND };
  const old = SETTING_NAMES.filter((name) => reducePane(read, { type: "entry changed", name, value: "x" }).foundIsOld);
  // rows are left out by these alone: after the as-of date, typed in too late, levels outside the scale, dates and gestations
  // that cannot be read; peerLevel decides which blank answers matter
  expect(old).toEqual([
    "asOf",
    "enteredBy",
    "ratingLevels",
    "peerLevel",
    "gestationDecimals",
    "metDates",
    "monthFirst",
  ]);
});

test("the threshold of a release, its dates and its seed do not make two figures of one name different", () => {
  const defining = settingsThatBearOn("ages", "met", "boxes", "groups", "confidence");
  for (const name of ["asOf", "from", "minimumCell", "floor", "seed"]) expect(defining).not.toContain(name);
  for (const name of ["correctUntil", "edges", "recheck", "by", "level"]) expect(defining).toContain(name);
});
