import type { Sheet } from "./leaving";

/** A count that must not be proved small: counts that are printed, added and taken away. */
export interface Derived {
  readonly name: string;
  readonly terms: readonly (readonly [cell: string, times: number])[];
}

/** The counts of one table. */
export const COUNTS: Readonly<Partial<Record<Sheet["id"], readonly string[]>>> = {
  "met-by-band": BOX_COUNTS(),
  "met-by-band-left": BOX_COUNTS(),
  "reached-by-age": ["children", "met", "notMet", "notKnown"],
  "age-when-met": ["children", "hadAtFirstLook", "interval", "notMet"],
  referrals: ["children", "referrals", "childrenReferred"],
  "referral-steps": ["of", "count", "within45", "of45"],
  ratings: ["a", "b", "aOrB", "c", "d", "e", "count", "of"],
  trend: ["children", "met", "assessed"],
};

function BOX_COUNTS(): string[] {
  return ["children", "hadAtFirstLook", "gained", "notMet", "outOfDate", "lost", "notAssessed", "assessed", "met"];
}

/** What is left over in a row, as METHOD.md, section 7, names it. */
const LEFT_OVER: Readonly<
  Partial<Record<Sheet["id"], readonly (readonly [words: string, whole: string, part: string])[]>>
> = {
  "met-by-band": boxes(),
  "met-by-band-left": boxes(),
  trend: boxes(),
  "reached-by-age": [["not yet", "children", "met"]],
  "age-when-met": [["ever met", "children", "notMet"]],
  referrals: [
    ["further", "referrals", "childrenReferred"],
    ["not referred", "children", "childrenReferred"],
  ],
  "referral-steps": [
    ["not taken", "of", "count"],
    ["not in time", "of45", "within45"],
  ],
  ratings: [["not in the statement", "of", "count"]],
};

function boxes(): readonly (readonly [string, string, string])[] {
  return [
    ["without", "assessed", "met"],
    ["unknown", "children", "assessed"],
    ["not yet", "children", "met"],
  ];
}

/** The name of a printed count. */
export function cellName(sheet: Sheet, row: Sheet["rows"][number], column: string): string {
  const keys = ["skill", "area", "band", "age", "dimension", "value", "step", "outcome", "statement", "quarter"];
  const labels = [...sheet.by, ...keys].flatMap((key) => (key in row ? [`${key}=${row[key]}`] : []));
  const isOfPeriod = ["met-by-band-left", "referrals", "referral-steps", "ratings"].includes(sheet.id);
  return [sheet.id, isOfPeriod ? `${sheet.from}..${sheet.asOf}` : sheet.asOf, ...labels, column].join("|");
}

/** Remainders of rows, totals over groups and ages, and what lies between two tables of one day. */
export function derivedOf(sheets: readonly Sheet[]): Derived[] {
  return [...sheets.flatMap(remainders), ...sheets.flatMap(totals), ...between(sheets)];
}

function remainders(sheet: Sheet): Derived[] {
  return sheet.rows.flatMap((row) =>
    (LEFT_OVER[sheet.id] ?? [])
      .filter(([, whole, part]) => isHeld(row[whole]) && isHeld(row[part]))
      .map(([words, whole, part]) => ({
        name: cellName(sheet, row, words),
        terms: [
          [cellName(sheet, row, whole), 1],
          [cellName(sheet, row, part), -1],
        ] as const,
      })),
  );
}

function isHeld(value: string | undefined): boolean {
  return value !== undefined && value !== "";
}

/** Over all ages, and over all groups: what nobody printed is as secret. */
function totals(sheet: Sheet): Derived[] {
  if (sheet.id !== "met-by-band" && sheet.id !== "met-by-band-left") {
    return ["reached-by-age", "age-when-met"].includes(sheet.id) ? sumsOver(sheet, [], "all groups") : [];
  }
  const groupsOverAges = sumsOver(sheet, ["band"], "all ages", true);
  return [...groupsOverAges, ...sumsOver(sheet, [], "all groups"), ...sumsOver(sheet, ["band"], "all groups and ages")];
}

function sumsOver(sheet: Sheet, over: readonly string[], words: string, keepsGroups = false): Derived[] {
  if (over.length === 0 && sheet.by.length === 0) return [];
  if (over.length > 0 && !keepsGroups && sheet.by.length === 0) return [];
  const gone = keepsGroups ? over : [...over, ...sheet.by];
  const counts = COUNTS[sheet.id] ?? [];
  const likes = new Map<string, Sheet["rows"][number][]>();
  for (const row of sheet.rows) {
    const name = ["skill", "area", "band", "age", ...sheet.by]
      .filter((key) => key in row && !gone.includes(key))
      .map((key) => row[key])
      .join("|");
    likes.set(name, [...(likes.get(name) ?? []), row]);
  }
  return [...likes].flatMap(([name, rows]) =>
    counts.map((column) => ({
      name: [sheet.id, words, sheet.asOf, name, column].join("|"),
      terms: rows.map((row) => [cellName(sheet, row, column), 1] as const),
    })),
  );
}

/** Of children ever in the program, those who are in it no more, and how these stand with each skill. */
function between(sheets: readonly Sheet[]): Derived[] {
  const of = (id: Sheet["id"]) => sheets.find((sheet) => sheet.id === id);
  const [followed, attained, reached] = [of("met-by-band"), of("age-when-met"), of("reached-by-age")];
  if (followed === undefined) return [];
  const rowsOf = (sheet: Sheet, skill: string) => sheet.rows.filter((row) => row["skill"] === skill);
  const sum = (sheet: Sheet, rows: Sheet["rows"], column: string, times: number) =>
    rows.map((row) => [cellName(sheet, row, column), times] as const);
  const skills = [...new Set(followed.rows.map((row) => row["skill"] ?? ""))].filter((skill) => skill !== "all");
  return skills.flatMap((skill) => {
    const own = rowsOf(followed, skill);
    const ever = attained && rowsOf(attained, skill);
    const youngest =
      reached && rowsOf(reached, skill).filter((row) => row["age"] === rowsOf(reached, skill)[0]?.["age"]);
    return [
      ...(youngest === undefined
        ? []
        : [
            {
              name: ["between", followed.asOf, "gone"].join("|"),
              terms: [...sum(reached!, youngest, "children", 1), ...sum(followed, own, "children", -1)],
            },
          ]),
      ...(attained === undefined || ever === undefined
        ? []
        : [
            {
              name: ["between", followed.asOf, skill, "gone, not met by last look"].join("|"),
              terms: [
                ...sum(attained, ever, "notMet", 1),
                ...sum(followed, own, "notMet", -1),
                ...sum(followed, own, "outOfDate", -1),
              ],
            },
            {
              name: ["between", followed.asOf, skill, "gone, ever met"].join("|"),
              terms: [
                ...sum(attained, ever, "hadAtFirstLook", 1),
                ...sum(attained, ever, "interval", 1),
                ...sum(followed, own, "met", -1),
                ...sum(followed, own, "lost", -1),
              ],
            },
          ]),
    ];
  });
}
