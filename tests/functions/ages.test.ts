import fc from "fast-check";
import { age, correctedAge } from "../../functions";
import { dayFromIso, isoOf } from "../../src/age/day";
import { serialOf } from "../../src/age/serial";
import { COMPLETED_MONTHS } from "../published/completed-months";
import { CORRECTED_AGES, CORRECTED_WEEKS } from "../published/corrected-ages";
import { answerOf, cellOf, column, rowsOf } from "./call";

describe("published", () => {
  test.each(CORRECTED_AGES)("born %s, on %s, %i days of gestation: %i days", (birth, on, gestation, days, months) => {
    expect(cellOf("CORRECTEDAGE", birth, gestation, on, "days", "always")).toBe(days);
    if (months !== null) expect(cellOf("CORRECTEDAGE", birth, gestation, on, "completed", "always")).toBe(months);
  });

  test.each(CORRECTED_WEEKS)("%s: %i weeks of gestation, %i weeks old: %i", (_source, gestation, weeks, corrected) => {
    const birth = dayFromIso("2001-03-19") as number;
    expect(cellOf("CORRECTEDAGE", isoOf(birth), gestation, isoOf(birth + weeks * 7), "weeks")).toBe(corrected);
  });

  test.each(COMPLETED_MONTHS)("completed months from %s to %s", (birth, on, days, months) => {
    expect(cellOf("AGE", birth, on, "days")).toBe(days);
    expect(cellOf("AGE", birth, on, "completed")).toBe(months);
  });
});

describe("by hand", () => {
  test("each unit, from 15 January to August 27, 2026: 224 days, 7 months and 12 of the 31 days to 15 September", () => {
    const ages = ["months", "completed", "weeks", "days", "text"].map((unit) =>
      cellOf("AGE", "2026-01-15", "2026-08-27", unit),
    );
    expect(ages).toEqual([7 + 12 / 31, 7, 32, 224, "7 months 12 days"]);
  });

  test("the words know one month and one day, and the days before the baby was due", () => {
    expect(cellOf("AGE", "2026-01-15", "2026-02-16", "text")).toBe("1 month 1 day");
    // 36 weeks 0 days is 28 days before term: due on 29 January
    expect(cellOf("CORRECTEDAGE", "2026-01-01", "36+0", "2026-01-19", "text")).toBe("0 months 10 days before due");
  });

  test("completed months round towards minus infinity before the day the baby was due", () => {
    // 28 weeks 0 days is 84 days before term: born January 1, 2026, due March 26, 2026
    expect(cellOf("CORRECTEDAGE", "2026-01-01", "28+0", "2026-03-25", "completed")).toBe(-1);
    expect(cellOf("CORRECTEDAGE", "2026-01-01", "28+0", "2026-03-26", "completed")).toBe(0);
  });

  test("correcting stops at 24 months of age counted from birth, or as asked", () => {
    const onDay = (on: string, until?: unknown) => cellOf("CORRECTEDAGE", "2022-01-10", "28+0", on, "months", until);
    expect(onDay("2024-01-09")).toBeLessThan(24);
    expect(onDay("2024-01-10")).toBe(24);
    expect(onDay("2024-01-10", 36)).toBeLessThan(24);
    // due on April 4, 2022: corrected age 24 on April 4, 2024, when correcting stops and the age jumps by 84 days
    expect(onDay("2024-04-03", "24 corrected")).toBeLessThan(24);
    expect(onDay("2024-04-04", "24 corrected")).toBe(26 + 25 / 31);
  });

  test("born at 37 weeks 0 days, or with no gestation recorded, is not corrected", () => {
    const days = (gestation: unknown) => cellOf("CORRECTEDAGE", "2026-01-01", gestation, "2026-04-11", "days");
    expect(["36+6", "37+0", null, "", 0].map(days)).toEqual([78, 100, 100, 100, 100]);
  });

  test("gestation in every notation: 28 weeks 3 days is 199 days", () => {
    const forms = ["28+3", "28w3d", "28 3/7", 199, "199", "28w", 28, "28", 28.43];
    expect(rowsOf("GESTATIONDAYS", column(forms)).flat()).toEqual([199, 199, 199, 199, 199, 196, 196, 196, 199]);
  });

  test("a bare decimal is read by what its column proves, and refused where it proves nothing", () => {
    // 28.3 x 7 = 198.1; 30.7 cannot be 7 days, so the column holds decimal weeks; 30.7 x 7 = 214.9
    expect(rowsOf("GESTATIONDAYS", column([28.3, 30.7])).flat()).toEqual([198, 215]);
    expect(answerOf("GESTATIONDAYS", 28.3)).toEqual({
      error: "#VALUE!",
      message: "gestation may mean weeks and days, or weeks with a decimal: write it as 28+3.",
    });
  });

  test("bands and their labels, with the usual edges and with others", () => {
    const usual = rowsOf("AGEBAND", column([-0.5, 0, 5.99, 6, 35.9, 36]));
    expect(usual.flat()).toEqual([
      "before 0 months",
      "0 to <3 months",
      "3 to <6 months",
      "6 to <9 months",
      "24 to <36 months",
      "36 months and over",
    ]);
    expect(cellOf("AGEBAND", 7, [[0, 7, 14]])).toBe("7 to <14 months");
    expect(cellOf("AGEBAND", 7, column([0, 7, 14, 0, null]))).toBe("7 to <14 months");
    expect(cellOf("AGEBAND", 7, "0,7,14")).toBe("7 to <14 months");
    expect(cellOf("AGEBAND", 7, [[null]])).toBe("6 to <9 months");
  });
});

describe("blanks and dates", () => {
  test.each([null, "", 0])("a row without a birth date (%j) is blank", (empty) => {
    expect(rowsOf("AGE", column(["2026-01-01", empty]), "2026-01-11", "days").flat()).toEqual([10, null]);
    expect(rowsOf("CORRECTEDAGE", empty, empty, "2026-01-11").flat()).toEqual([null]);
    expect(rowsOf("GESTATIONDAYS", empty).flat()).toEqual([null]);
    expect(age([[empty]], [["2026-01-11"]])).toEqual([[""]]);
  });

  test("serial numbers and ISO text are the same day; a time of day is dropped", () => {
    const [birth, on] = [serialOf(dayFromIso("2026-01-15") as number, 1900), 46_261.75];
    expect(cellOf("AGE", birth, on, "days")).toBe(cellOf("AGE", "2026-01-15", "2026-08-27", "days"));
  });

  test("a single cell stands beside every cell of a column, and a column beside every cell of a row", () => {
    const births = ["2026-01-15", "2025-11-30", "2026-02-28"];
    const days = ["2026-06-30", "2026-07-31"];
    const each = births.map((birth) => days.map((on) => cellOf("AGE", birth, on)));
    expect(rowsOf("AGE", column(births), [days])).toEqual(each);
    expect(rowsOf("AGE", column(births), days[0])).toEqual(each.map((row) => [row[0]]));
    expect(rowsOf("AGE", births[0], [[days[0]]])).toEqual([[each[0]?.[0]]]);
  });

  test("a column answers as its rows do one by one, in any order", () => {
    const day = fc.integer({ min: 18_000, max: 19_000 }).map(isoOf);
    const row = fc.tuple(day, fc.constantFrom("27+2", 31, "36w5d", null, 300, "soon"), day);
    fc.assert(
      fc.property(fc.array(row, { minLength: 2, maxLength: 12 }), (rows) => {
        const columns = [0, 1, 2].map((at) => column(rows.map((each) => each[at])));
        const one = rows.map((each) => {
          const answer = answerOf("CORRECTEDAGE", ...each);
          return "error" in answer ? answer : answer.result[0]?.[0];
        });
        expect(rowsOf("CORRECTEDAGE", ...columns).flat()).toEqual(one);
        const backwards = columns.map((each) => [...each].reverse());
        expect(rowsOf("CORRECTEDAGE", ...backwards).flat()).toEqual([...one].reverse());
      }),
    );
  });
});

describe("refusals", () => {
  test.each([
    ["AGE", ["2026-08-01", "2026-07-31"], "#NUM!", "on comes before birth: check both dates."],
    ["AGE", ["2026-08-01", null], "#VALUE!", "on is empty: give a date."],
    [
      "AGE",
      ["1.8.2026", "2026-07-31"],
      "#VALUE!",
      "birth is not a date: use a cell with a date, or text such as 2026-09-30.",
    ],
    [
      "AGE",
      ["2026-02-30", "2026-07-31"],
      "#VALUE!",
      "birth is not a date: use a cell with a date, or text such as 2026-09-30.",
    ],
    ["AGE", [60, "2026-07-31"], "#VALUE!", "birth is not a date: use a cell with a date, or text such as 2026-09-30."],
    [
      "AGE",
      [true, "2026-07-31"],
      "#VALUE!",
      "birth is not a date: use a cell with a date, or text such as 2026-09-30.",
    ],
    ["AGE", ["2026-01-01", "2026-07-31", "years"], "#VALUE!", "unit is one of: months, completed, weeks, days, text."],
    [
      "AGE",
      [
        [["2026-01-01"], ["2026-01-02"]],
        [["2026-07-31"], ["2026-07-31"], ["2026-07-31"]],
      ],
      "#VALUE!",
      "birth has 2 rows and on has 3: give both the same, or one cell.",
    ],
    ["AGE", ["2026-01-01", "2026-07-31", [["days"], ["weeks"]]], "#VALUE!", "unit: give one cell, not a range."],
    ["CORRECTEDAGE", [null, "28+3", "2026-07-31"], "#VALUE!", "birth is empty: give a date."],
    [
      "CORRECTEDAGE",
      ["2026-01-01", "28+9", "2026-07-31"],
      "#VALUE!",
      "gestation cannot be read: write it as 28+3, 28w3d, 28w, 28 3/7, whole weeks, or days.",
    ],
    [
      "CORRECTEDAGE",
      ["2026-01-01", "28+3", "2026-07-31", null, 0],
      "#NUM!",
      "until is a number of months over 0; leave it out for 24.",
    ],
    [
      "CORRECTEDAGE",
      ["2026-01-01", "28+3", "2026-07-31", null, "soon"],
      "#VALUE!",
      "until is not a number: type it with digits alone.",
    ],
    [
      "GESTATIONDAYS",
      [322],
      "#NUM!",
      "gestation is out of range: 20 weeks 0 days to 45 weeks 6 days, or 140 to 321 days.",
    ],
    [
      "GESTATIONDAYS",
      ["19+6"],
      "#NUM!",
      "gestation is out of range: 20 weeks 0 days to 45 weeks 6 days, or 140 to 321 days.",
    ],
    ["AGEBAND", ["old"], "#VALUE!", "months is not a number: type it with digits alone."],
    ["AGEBAND", [7, [[0, 6, 6]]], "#VALUE!", "edges must rise, such as 0, 6, 12."],
  ])("%s(%j) is %s", (name, args, error, message) => {
    expect(answerOf(name, ...args)).toEqual({ error, message });
  });

  test("a bad row gives its error in that cell alone", () => {
    expect(rowsOf("AGE", column(["2026-01-01", "soon", "2027-01-01"]), "2026-01-11", "days").flat()).toEqual([
      10,
      { error: "#VALUE!", message: "birth is not a date: use a cell with a date, or text such as 2026-09-30." },
      { error: "#NUM!", message: "on comes before birth: check both dates." },
    ]);
  });

  test("no message repeats the text of a cell", () => {
    const answer = answerOf("CORRECTEDAGE", "canary-birth", "canary-gestation", "canary-day");
    expect(JSON.stringify(answer)).not.toContain("canary");
    expect(() => correctedAge([["canary"]], [["canary"]], [["canary"]])).toThrow(/^(?!.*canary)/);
  });
});
