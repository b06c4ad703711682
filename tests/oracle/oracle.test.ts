/** Worked on paper from the written definitions; the reasoning stands beside each case. */
import { MEASURED, SIX_CHILDREN } from "./six-children";
import { oracleTables } from "./oracle-tables";
import { child, look, program, rowWith, skill } from "./programs";

describe("six children and one skill", () => {
  test("met by band: one child in each box", () => {
    // B (6 months to the day: 31 December + 6 months clamps to 30 June), C, D, E and F stand in 6 to <9 months.
    // Assessed leaves out D (out of date) and F: 3. Met: B alone. Wilson for 1 of 3, worked by hand:
    // (1 + 1.92073) / 6.84146 = 0.42692, half width 1.95996 / 6.84146 x sqrt(2/3 + 0.96036) = 0.36542.
    const row = rowWith(SIX_CHILDREN, "met-by-band", { skill: "sits", band: "6 to <9 months" });
    expect(row).toMatchObject({
      children: 5,
      hadAtFirstLook: 1,
      gained: 0,
      notMet: 1,
      outOfDate: 1,
      lost: 1,
      notAssessed: 1,
    });
    expect(row).toMatchObject({ assessed: 3, met: 1, shareMet: 1 / 3, lowest: 1 / 5, highest: 3 / 5 });
    expect(row["lower"]).toBeCloseTo(0.0615, 4);
    expect(row["upper"]).toBeCloseTo(0.7923, 4);
  });

  test("met by band: 9 months to the day belongs to the band that begins there", () => {
    // A alone, gained. Wilson for 1 of 1: lower 1 / (1 + 3.84146) = 0.20655, upper 1.
    const row = rowWith(SIX_CHILDREN, "met-by-band", { skill: "sits", band: "9 to <12 months" });
    expect(row).toMatchObject({ children: 1, gained: 1, assessed: 1, shareMet: 1, lowest: 1, highest: 1 });
    expect(row["lower"]).toBeCloseTo(0.2065, 4);
    expect(row["upper"]).toBeCloseTo(1, 12);
  });

  test("the area's rows count the same child-skills and carry no interval", () => {
    const row = rowWith(SIX_CHILDREN, "met-by-band", { skill: "all", band: "6 to <9 months" });
    expect(row).toMatchObject({ children: 5, met: 1, assessed: 3, shareMet: 1 / 3, lower: null, upper: null });
  });

  // Ages: A last without at 3 11/31, met at 6 11/31; B met at 5 1/30; C last without at 5 17/31, D at 5 16/31; E met at 4.
  test.each([
    { age: 0, met: 0, notMet: 3, notKnown: 3 }, // A, C, D were seen without it; B and E had it at the first look
    { age: 3, met: 0, notMet: 3, notKnown: 3 },
    { age: 6, met: 2, notMet: 0, notKnown: 4 }, // B and E
    { age: 9, met: 3, notMet: 0, notKnown: 3 }, // A as well
    { age: 36, met: 3, notMet: 0, notKnown: 3 },
  ])("reached by $age months", ({ age, met, notMet, notKnown }) => {
    const expected = { children: 6, met, notMet, notKnown, lowest: met / 6, highest: (met + notKnown) / 6 };
    expect(rowWith(SIX_CHILDREN, "reached-by-age", { age })).toMatchObject(expected);
  });

  test("age when met: F was never observed; the recorded ages are 121, 153 and 193 days", () => {
    const row = rowWith(SIX_CHILDREN, "age-when-met", { skill: "sits" });
    expect(row).toMatchObject({
      children: 5,
      hadAtFirstLook: 2,
      interval: 1,
      notMet: 2,
      recordedMedian: 153 / 30.4375,
    });
  });

  test.each(MEASURED)("days of age and days since enrolment of $child", ({ child: id, age, enrolment }) => {
    expect(rowWith(SIX_CHILDREN, "age-intervals", { child: id })).toMatchObject(age);
    const since = oracleTables(SIX_CHILDREN)["enrolment-intervals"].filter((row) => row["child"] === id);
    expect(since).toMatchObject(enrolment === null ? [] : [enrolment]);
  });

  test("since enrolment: C and D checked without it, B and E already met at the first check, A without it before only", () => {
    expect(rowWith(SIX_CHILDREN, "since-enrollment", { skill: "sits" })).toEqual({
      skill: "sits",
      children: 2,
      metAtFirstCheck: 2,
      gained: 0,
    });
  });
});

describe("when a skill was met", () => {
  const born = child("A", "2023-09-01");
  const status = (...looks: ReturnType<typeof look>[]): object =>
    rowWith(program([born], looks), "skill-status", { child: "A" });

  test("met on the day of birth is exact", () => {
    const input = program([born], [look("A", "2023-09-01", "met")]);
    expect(rowWith(input, "age-intervals", { child: "A" })).toMatchObject({ after: 0, by: 0 });
    expect(status(look("A", "2023-09-01", "met"))).toMatchObject({ box: "had at first look", metAfter: "2023-09-01" });
  });

  test("lost with no earlier met proves that the skill was there", () => {
    const looks = [look("A", "2024-01-01", "not met"), look("A", "2024-05-01", "lost")];
    const expected = { state: "lost", box: "lost", timing: null, metAfter: "2024-01-01", metBy: "2024-05-01" };
    expect(status(...looks)).toMatchObject(expected);
  });

  test("lost at the first look, then met: met again, and there since before the loss", () => {
    const looks = [look("A", "2024-02-01", "lost"), look("A", "2024-05-01", "met")];
    const expected = { state: "met", box: "had at first look", metAfter: "2023-09-01", metBy: "2024-02-01" };
    expect(status(...looks)).toMatchObject(expected);
  });

  test("emerging after met is lost, to confirm; a later met restores it and the first attainment stands", () => {
    const looks = [look("A", "2024-01-01", "met"), look("A", "2024-03-01", "emerging")];
    expect(status(...looks)).toMatchObject({ state: "lost to confirm", box: "lost", metBy: "2024-01-01" });
    const restored = [...looks, look("A", "2024-04-01", "met")];
    expect(status(...restored)).toMatchObject({ state: "met", box: "had at first look", metBy: "2024-01-01" });
  });

  test("different results on one day are one look without the skill", () => {
    const looks = [look("A", "2024-06-01", "met"), look("A", "2024-06-01", "emerging")];
    expect(status(...looks)).toMatchObject({ state: "not met", box: "not met", metAfter: null, metBy: null });
    const after = [look("A", "2024-01-01", "met"), look("A", "2024-06-01", "lost"), look("A", "2024-06-01", "met")];
    expect(status(...after)).toMatchObject({ state: "lost to confirm" });
  });

  test("looks before birth, after the as-of date or entered after the cut-off say nothing", () => {
    const looks = [
      look("A", "2023-08-31", "met"),
      look("A", "2024-07-01", "met"),
      look("A", "2024-06-01", "met", { entered: "2024-07-02" }),
    ];
    const input = program([born], looks, { settings: { enteredBy: "2024-07-01" } });
    expect(rowWith(input, "skill-status", { child: "A" })).toMatchObject({ state: "not assessed", lastLook: null });
    for (const entered of [null, "2024-07-01"]) {
      const used = program([born], [look("A", "2024-06-01", "met", { entered })], {
        settings: { enteredBy: "2024-07-01" },
      });
      expect(rowWith(used, "skill-status", { child: "A" })).toMatchObject({ state: "met", lastLook: "2024-06-01" });
    }
  });

  test("a skill that gave way is not lost while the one that follows it, read the same way, is met", () => {
    const skills = [skill("crawls"), skill("walks", { follows: "crawls" }), skill("runs", { follows: "walks" })];
    const crawl = [
      look("A", "2024-01-01", "met", { skill: "crawls" }),
      look("A", "2024-05-01", "lost", { skill: "crawls" }),
    ];
    const walk = [
      look("A", "2024-02-01", "met", { skill: "walks" }),
      look("A", "2024-05-01", "not met", { skill: "walks" }),
    ];
    const run = look("A", "2024-06-01", "met", { skill: "runs" });
    const states = (...looks: ReturnType<typeof look>[]): unknown[] =>
      oracleTables(program([born], looks, { skills }))["skill-status"].map((row) => row["state"]);
    expect(states(...crawl)).toEqual(["lost", "not assessed", "not assessed"]);
    expect(states(...crawl, ...walk.slice(0, 1))).toEqual(["met", "met", "not assessed"]);
    expect(states(...crawl, ...walk)).toEqual(["lost", "lost to confirm", "not assessed"]);
    expect(states(...crawl, ...walk, run)).toEqual(["met", "met", "met"]);
    // Only the next link counts: running says nothing of crawling where walking was never looked at.
    expect(states(...crawl, run)).toEqual(["lost", "not assessed", "met"]);
  });
});

describe("ages", () => {
  // Born at 24 weeks 0 days, 112 days early; due on June 21, 2022. Chronologically 24 months on March 1, 2024.
  const early = child("P", "2022-03-01", { gestation: 168 });
  const skills = [skill("sits", { opens: 12, closes: 24, ageBasis: null })];
  const on = (asOf: string, untilMonths: 24 | "24 corrected" | "always" = 24): object =>
    rowWith(program([early], [], { skills, settings: { asOf, from: null, untilMonths } }), "skill-status", {
      child: "P",
    });

  test("the age jumps where correction stops, and the status says why it changed", () => {
    // 29 February: 20 months from June 21, 2022 is February 21, 2024; 8 of the 29 days to 21 March have passed.
    expect(on("2024-02-29")).toMatchObject({ ageMonths: 20 + 8 / 29, window: "in window", reason: null });
    expect(on("2024-03-01")).toMatchObject({ ageMonths: 24, window: "past window", reason: "correction stopped" });
  });

  test("until a corrected age, and always", () => {
    // June 21, 2024 is 24 corrected months to the day: from then on 27 months and 20 of 30 days.
    expect(on("2024-06-20", "24 corrected")).toMatchObject({ ageMonths: 23 + 30 / 31 });
    expect(on("2024-06-21", "24 corrected")).toMatchObject({ ageMonths: 27 + 20 / 30 });
    expect(on("2024-06-21", "always")).toMatchObject({ ageMonths: 24, reason: null });
  });

  test("an interval begins at the age at birth, minus the correction", () => {
    // 1 March to June 21, 2022 is 112 days, to 1 July 122: ten days of corrected age.
    const input = program([early], [look("P", "2022-07-01", "met")], { skills });
    expect(rowWith(input, "age-intervals", { child: "P" })).toMatchObject({ after: -112, by: 10 });
  });

  test("36 weeks 6 days is corrected, 37 weeks 0 days is not, and gestations in conflict are not", () => {
    const age = (...gestations: (number | null)[]): unknown => {
      const rows = gestations.map((gestation) => child("G", "2024-05-31", { gestation }));
      return rowWith(program(rows, [], { skills }), "skill-status", { child: "G" })["ageMonths"];
    };
    // Due 22 days after 31 May: 22 June; 8 of 30 days. Uncorrected: 31 May + 1 month clamps to 30 June.
    expect(age(258)).toBeCloseTo(8 / 30, 12);
    expect(age(259)).toBe(1);
    expect(age(null)).toBe(1);
    expect(age(258, null)).toBeCloseTo(8 / 30, 12);
    expect(age(258, 252)).toBe(1);
  });

  test("before the due date the months are negative, in a band of their own", () => {
    // Due July 12, 2024, 12 days after 30 June: 1 month before is 12 June; 18 of 30 days have passed since.
    const input = program([child("N", "2024-06-01", { gestation: 239 })], [], { skills });
    expect(rowWith(input, "skill-status", { child: "N" })["ageMonths"]).toBeCloseTo(-1 + 18 / 30, 12);
    expect(rowWith(input, "met-by-band", { skill: "sits" })).toMatchObject({ band: "before 0 months", notAssessed: 1 });
  });

  test("3 months and 24 of 30 days is 3.8 months: in the window that opens there", () => {
    // Born 1 March: 3 months on 1 June, 24 days later 25 June.
    const input = (asOf: string): object =>
      rowWith(
        program([child("W", "2024-03-01")], [], { skills: [skill("sits", { opens: 3.8 })], settings: { asOf } }),
        "skill-status",
        { child: "W" },
      );
    expect(input("2024-06-24")).toMatchObject({ window: "before window" });
    expect(input("2024-06-25")).toMatchObject({ window: "in window" });
  });
});

describe("timing of a skill that opens at 6 and closes at 9 months", () => {
  // Born on the first of September: the first of March is 6 months, the first of June 9.
  const timing = (first: string | null, met: string, opens: number | null = 6, closes: number | null = 9): unknown => {
    const looks = [...(first === null ? [] : [look("A", first, "not met")]), look("A", met, "met")];
    const options = { skills: [skill("sits", { opens, closes })] };
    return rowWith(program([child("A", "2023-09-01")], looks, options), "skill-status", { child: "A" })["timing"];
  };

  test.each([
    [null, "2024-02-29", "early"],
    ["2024-01-01", "2024-02-29", "early"],
    [null, "2024-03-01", "not known"], // from birth: perhaps before it opened
    ["2024-02-29", "2024-03-01", "not known"],
    ["2024-03-01", "2024-05-31", "in window"],
    ["2024-03-01", "2024-06-01", "not known"], // 9 months to the day is past
    ["2024-06-01", "2024-06-20", "late"],
  ])("without it on %s, with it on %s: %s", (first, met, expected) => {
    expect(timing(first, met)).toBe(expected);
  });

  test("with no opening nothing is early; with no closing nothing is late; with neither there is no timing", () => {
    expect(timing(null, "2024-02-01", null)).toBe("in window");
    expect(timing("2024-06-01", "2024-06-20", 6, null)).toBe("in window");
    expect(timing(null, "2024-02-01", null, null)).toBeNull();
  });
});

describe("who is followed", () => {
  const place = { site: "North" };
  const inTable = (
    table: "met-by-band" | "met-by-band-left",
    rows: ReturnType<typeof child>[],
    looks = [] as ReturnType<typeof look>[],
  ) =>
    oracleTables(program(rows, looks, { settings: { by: ["Site"] } }))[table].filter((row) => row["skill"] === "sits");

  test("the day of leaving is not followed; the day of enrolment is", () => {
    expect(inTable("met-by-band", [child("A", "2024-01-01", { left: "2024-06-30" })])).toEqual([]);
    expect(inTable("met-by-band", [child("A", "2024-01-01", { left: "2024-07-01" })])).toHaveLength(1);
    expect(inTable("met-by-band", [child("A", "2024-01-01", { enrolled: "2024-06-30" })])).toHaveLength(1);
    expect(inTable("met-by-band", [child("A", "2024-01-01", { enrolled: "2024-07-01" })])).toEqual([]);
  });

  test("of overlapping enrolments the later begun counts", () => {
    const later = child("A", "2024-01-01", { enrolled: "2024-04-01", site: "South" });
    expect(inTable("met-by-band", [later, child("A", "2024-01-01", place)])).toMatchObject([
      { Site: "South", children: 1 },
    ]);
  });

  test("of two begun on one day the lower on the sheet counts", () => {
    const second = child("A", "2024-01-01", { site: "South" });
    expect(inTable("met-by-band", [child("A", "2024-01-01", place), second])).toMatchObject([{ Site: "South" }]);
  });

  test("since enrolment: met on the day of enrolment is not without the skill that day", () => {
    const rows = [child("A", "2024-01-01", { enrolled: "2024-05-01" })];
    const met = (date: string, ...without: string[]): object =>
      rowWith(
        program(rows, [...without.map((day) => look("A", day, "not met")), look("A", date, "met")]),
        "since-enrollment",
        { skill: "sits" },
      );
    expect(met("2024-05-01")).toMatchObject({ children: 0, metAtFirstCheck: 0, gained: 0 });
    expect(met("2024-05-02")).toMatchObject({ children: 0, metAtFirstCheck: 1, gained: 0 });
    expect(met("2024-05-02", "2024-05-01")).toMatchObject({ children: 1, metAtFirstCheck: 0, gained: 1 });
    expect(met("2024-05-02", "2024-04-30")).toMatchObject({ children: 0, metAtFirstCheck: 0, gained: 0 });
  });

  test("a leaver stands as on the last day: later looks do not count, and age and staleness are that day's", () => {
    // Last day 31 May: 5 months from 31 December to the day. 2 March is 90 days before it.
    const leaver = child("A", "2023-12-31", { left: "2024-06-01" });
    const looks = [look("A", "2024-03-02", "not met"), look("A", "2024-06-01", "met")];
    expect(inTable("met-by-band-left", [leaver], looks)).toMatchObject([
      { band: "3 to <6 months", children: 1, notMet: 1 },
    ]);
    expect(inTable("met-by-band-left", [leaver], looks.slice(1))).toMatchObject([{ notAssessed: 1 }]);
  });

  test("left on the first day of the period counts, the day before does not, nor a child who came back", () => {
    const left = (day: string) => child("A", "2024-01-01", { left: day });
    expect(inTable("met-by-band-left", [left("2024-04-01")])).toHaveLength(1);
    expect(inTable("met-by-band-left", [left("2024-03-31")])).toEqual([]);
    const back = child("A", "2024-01-01", { enrolled: "2024-05-01" });
    expect(inTable("met-by-band-left", [left("2024-04-01"), back])).toEqual([]);
    const gone = { ...back, left: "2024-05-02", site: "South" };
    expect(inTable("met-by-band-left", [left("2024-04-01"), gone])).toMatchObject([{ Site: "South", children: 1 }]);
  });

  test("a blank Enrolled is the first observation; rows with different birth dates leave the child out", () => {
    const blank = child("A", "2024-01-01", { enrolled: null });
    expect(inTable("met-by-band", [blank])).toEqual([]);
    expect(inTable("met-by-band", [blank], [look("A", "2024-06-30", "met")])).toMatchObject([{ hadAtFirstLook: 1 }]);
    expect(inTable("met-by-band", [child("A", "2024-01-01"), child("A", "2024-01-02")])).toEqual([]);
  });
});

describe("agreement", () => {
  const day = (date: string, ...said: [string, "met" | "not met"][]) =>
    said.map(([observer, result]) => look("A", date, result, { observer }));

  test("kappa of four pairs", () => {
    // The first of a pair is the code that sorts first, "T1" before "t2", whoever stands first on the sheet. Agreed 2 of 4;
    // the first says met 3 of 4, the second 1 of 4: chance (3 x 1 + 1 x 3) / 16 = 3/8, kappa (1/2 - 3/8) / (5/8) = 1/5.
    const looks = [
      ...day("2024-02-01", ["T1", "met"], ["t2", "met"]),
      ...day("2024-03-01", ["t2", "not met"], ["T1", "met"]),
      ...day("2024-04-01", ["T1", "not met"], ["t2", "not met"]),
      ...day("2024-05-01", ["T1", "met"], ["t2", "not met"]),
    ];
    const rows = oracleTables(program([child("A", "2023-09-01")], looks)).agreement;
    expect(rows).toEqual([{ skill: "sits", pairs: 4, percent: 50, kappa: 0.2 }]);
  });

  test("three observers are three pairs; one word from all leaves no kappa; the unnamed are no one", () => {
    const looks = [...day("2024-02-01", ["a", "met"], ["b", "met"], ["c", "met"]), look("A", "2024-02-01", "lost")];
    const rows = oracleTables(program([child("A", "2023-09-01")], looks)).agreement;
    expect(rows).toEqual([{ skill: "sits", pairs: 3, percent: 100, kappa: null }]);
    expect(oracleTables(program([child("A", "2023-09-01")], looks.slice(2))).agreement).toEqual([]);
  });
});
