import fc from "fast-check";
import { trend } from "../../src/tables/trend";
import { trendOverview } from "../../src/tables/trend-overview";
import { lastQuarters } from "../../src/tables/trend-quarters";
import { isoOf } from "../../src/age/day";
import { day } from "../cohort/small-cohorts";
import { addDays } from "../oracle/calendar";
import type { ChildRow, ObservationRow, OracleInput } from "../oracle/input";
import { oracleTables } from "../oracle/oracle-tables";
import { child, look, program } from "../oracle/programs";
import { cohortArbitrary } from "../oracle/random-cohort";
import { shareInterval } from "../../src/statistics/share";
import { contextFrom, entriesOf, rowsOf, workbookWith } from "./referrals-book";

function tableOf(input: OracleInput) {
  return trend(contextFrom(workbookWith(input, {}), entriesOf(input)));
}

describe("quarters", () => {
  test("the eight up to the as-of date, each looked at on its last day, the last one on the as-of date", () => {
    const quarters = lastQuarters(day("2024-02-10"));
    expect(quarters.map(({ label }) => label)).toEqual([
      ...["2022-Q2", "2022-Q3", "2022-Q4", "2023-Q1", "2023-Q2", "2023-Q3", "2023-Q4", "2024-Q1"],
    ]);
    expect(quarters.map((quarter) => isoOf(quarter.day))).toEqual([
      ...[
        "2022-06-30",
        "2022-09-30",
        "2022-12-31",
        "2023-03-31",
        "2023-06-30",
        "2023-09-30",
        "2023-12-31",
        "2024-02-10",
      ],
    ]);
  });
});

describe("random programs", () => {
  test("each quarter is the second implementation's met-by-band of that day, summed over bands", () => {
    fc.assert(
      fc.property(cohortArbitrary(), (input) => {
        const ours = rowsOf(tableOf(input));
        const theirs = lastQuarters(day(input.settings.asOf)).flatMap((quarter) => quarterOf(input, quarter));
        const keyOf = (row: Record<string, unknown>) =>
          [...input.settings.by, "quarter", "skill"].map((key) => row[key]).join(" | ");
        expect(ours.map(keyOf).sort()).toEqual(theirs.map(keyOf).sort());
        for (const row of theirs) expect(ours.find((own) => keyOf(own) === keyOf(row))).toMatchObject(row);
        for (const row of ours) {
          const { share, lower, upper } = shareInterval(Number(row.met), Number(row.assessed), 0.95, "wilson");
          expect([row.shareMet, row.lower, row.upper]).toEqual([share, lower, upper]);
        }
      }),
      { numRuns: 40 },
    );
  });

  test("a child who came and left before the eight quarters changes no row", () => {
    fc.assert(
      fc.property(cohortArbitrary(), (input) => {
        const gone = child("gone", "2010-01-01", { enrolled: "2010-01-01", left: "2012-01-01" });
        fc.pre(input.settings.asOf > "2015");
        const rows = (children: readonly ChildRow[]) => tableOf({ ...input, children }).rows;
        expect(rows([...input.children, gone])).toEqual(rows(input.children));
      }),
      { numRuns: 25 },
    );
  });
});

/** The rows of one quarter as the second implementation has them. */
function quarterOf(input: OracleInput, quarter: { label: string; day: number }) {
  const settings = { ...input.settings, asOf: isoOf(quarter.day), from: null };
  const sums = new Map<string, Record<string, string | number | null>>();
  for (const row of oracleTables({ ...input, settings })["met-by-band"]) {
    if (row.skill === "all") continue;
    const head = Object.fromEntries([...input.settings.by, "skill", "area"].map((key) => [key, row[key] ?? null]));
    const key = JSON.stringify(head);
    const sum = sums.get(key) ?? { ...head, quarter: quarter.label, children: 0, met: 0, assessed: 0 };
    for (const name of ["children", "met", "assessed"]) sum[name] = Number(sum[name]) + Number(row[name]);
    sums.set(key, sum);
  }
  return [...sums.values()];
}

describe("late entries", () => {
  const children = [child("A", "2023-01-01")];
  /** Looks on two days a week for half a year, the first entered at once, the second ten days later. */
  const looks = (until: string): ObservationRow[] => {
    const rows: ObservationRow[] = [];
    for (let date = "2024-01-01"; date <= until; date = addDays(date, 7)) {
      rows.push(look("A", date, "not met", { entered: date }));
      rows.push(look("A", addDays(date, 1), "not met", { entered: addDays(date, 11) }));
    }
    return rows;
  };
  const tableWith = (rows: readonly ObservationRow[], settings: Partial<OracleInput["settings"]> = {}) =>
    tableOf(program(children, rows, { settings: { asOf: "2024-06-30", enteredBy: "2024-06-30", ...settings } }));
  const marked = (table: ReturnType<typeof tableOf>) =>
    Object.fromEntries(rowsOf(table).map(({ quarter, provisional }) => [quarter, provisional]));

  test("the last quarter alone is provisional while looks are still to come, with the share and the safe day", () => {
    const table = tableWith(looks("2024-06-24"));
    expect(marked(table)).toMatchObject({ "2024-Q1": false, "2024-Q2": true });
    expect(table.notes[0]).toMatch(
      /^2024-Q2 is provisional: about \d+ of \d+ .* up to June 30, 2024 were still to be entered on June 30, 2024, the last day/,
    );
    expect(table.notes[0]).toContain("is July ");
  });

  /** 13 Mondays of the quarter; the last, 24 June, misses its second look: 1 of 26. */
  test("by hand: one of 26 looks is still to come, 3.8%", () => {
    const [note] = tableWith(looks("2024-06-24")).notes;
    expect(note).toContain("about 1 of 26 (4%) of its observations up to");
  });

  test("closed long after: not provisional", () => {
    const table = tableWith([...looks("2024-06-24"), look("A", "2024-06-30", "not met", { entered: "2024-09-01" })], {
      enteredBy: "2024-09-30",
    });
    expect(marked(table)["2024-Q2"]).toBe(false);
  });

  test("records that end before the quarter close on their last day of entry, and the days after it are named", () => {
    const mondays = looks("2024-06-24").filter(({ date, entered }) => date === entered);
    const [note] = tableWith(mondays, { enteredBy: null }).notes;
    expect(note).toContain("were still to be entered on June 24, 2024");
    expect(note).toContain("Nothing is known of what was seen from the day after it to June 30, 2024.");
  });

  test("an entry of a row that does not count, seen after the as-of date, still shows that the records went on", () => {
    const later = look("A", "2024-07-20", "not met", { entered: "2024-08-05" });
    const [note] = tableWith([...looks("2024-06-24"), later], { enteredBy: null }).notes;
    expect(note).toContain("were still to be entered on August 5, 2024");
    expect(note).toMatch(/^2024-Q2 is not provisional/);
  });

  test("no day of entry kept: it cannot be told", () => {
    const table = tableWith(looks("2024-06-24").map((row) => ({ ...row, entered: null })));
    expect(marked(table)["2024-Q2"]).toBeNull();
    expect(table.notes[0]).toContain("is not known");
  });
});

describe("sites", () => {
  /** Children of a site and quarter end: `count` of `of` have the skill. Everybody leaves before the next quarter's end. */
  const put = (site: string, enrolled: string, left: string | null, count: number, of: number) =>
    Array.from({ length: of }, (_, at) => {
      const id = `${site} ${enrolled} ${at}`;
      const result = at < count ? "met" : "not met";
      return {
        child: child(id, "2022-06-01", { site, enrolled, left }),
        look: look(id, addDays(enrolled, 20), result),
      };
    });
  /** The counts of Charig et al. (1986), so many times over. */
  const charig = (times: number) => {
    const all = [
      ...put("North", "2024-01-01", "2024-04-02", 81 * times, 87 * times),
      ...put("River", "2024-01-01", "2024-04-02", 192 * times, 263 * times),
      ...put("North", "2024-05-01", null, 234 * times, 270 * times),
      ...put("River", "2024-05-01", null, 55 * times, 80 * times),
    ];
    return { children: all.map((each) => each.child), looks: all.map((each) => each.look) };
  };
  const { children, looks } = charig(1);
  const settings = { asOf: "2024-06-30" };
  const table = tableOf(program(children, looks, { settings }));
  const notes = table.notes.join("\n");

  /** Counts of Charig et al. (1986), Br Med J 292:879-882, from memory: pooled 273 and 289 of 350, within either stratum the other way. */
  test("a reversal within chance is not warned of: 5.4 points less, give or take 6.6", () => {
    expect(notes).not.toContain("Warning");
  });

  /**
   * By hand, w 0.51 and 0.49, three times the counts: variance 0.51^2 (0.931 x 0.069 / 261 + 0.867 x 0.133 / 810) +
   * 0.49^2 (0.730 x 0.270 / 789 + 0.6875 x 0.3125 / 240) = 0.000376, so that -5.4 goes with 3.8 either way: -9.2 to -1.6.
   */
  test("a reversal beyond chance is, with both changes and the interval", () => {
    const more = charig(3);
    expect(tableOf(program(more.children, more.looks, { settings })).notes.join("\n")).toContain(
      "Warning: gross motor, 2024-Q1 to 2024-Q2: the share met rises by 4.6 points when sites are pooled, and falls by 5.4 points when sites are standardized (95% confidence interval of the change \u22129.2 to \u22121.6 points).",
    );
  });

  /** North weighs 357, River 343: (357 x 81/87 + 343 x 192/263) / 700 = 83.3%, (357 x 234/270 + 343 x 55/80) / 700 = 77.9%. */
  test("pooled, standardised to the children of all quarters, and each site", () => {
    expect(notes).toContain(
      "gross motor (skill checks), 2024-Q1 to 2024-Q2: pooled 78.0% (273 of 350) to 82.6% (289 of 350), standardized 83.3% to 77.9%; North 93.1% (81 of 87) to 86.7% (234 of 270); River 73.0% (192 of 263) to 68.8% (55 of 80).",
    );
  });

  test("the same counts for the page, in the quarters that are compared", () => {
    const input = program(children, looks, { settings });
    const { sites, quarters } = trendOverview(contextFrom(workbookWith(input, {}), entriesOf(input)));
    expect(quarters.map(({ quarter }) => quarter).slice(-2)).toEqual(["2024-Q1", "2024-Q2"]);
    const count = (met: number, of: number) => ({ count: met, of });
    expect(sites).toMatchObject([
      {
        area: "gross motor",
        quarters: ["2024-Q1", "2024-Q2"],
        pooled: [count(273, 350), count(289, 350)],
        sites: [
          { name: "North", shares: [count(81, 87), count(234, 270)] },
          { name: "River", shares: [count(192, 263), count(55, 80)] },
        ],
      },
    ]);
    expect(sites[0]?.standardised?.[0]).toBeCloseTo((357 * (81 / 87) + 343 * (192 / 263)) / 700, 12);
    expect(sites[0]?.standardised?.[1]).toBeCloseTo((357 * (234 / 270) + 343 * (55 / 80)) / 700, 12);
  });

  test("the same children at one site: no warning, and nothing to stratify", () => {
    const one = children.map((row) => ({ ...row, site: "North" }));
    const plain = tableOf(program(one, looks, { settings }));
    expect(plain.rows).toEqual(table.rows);
    expect(plain.notes.join(" ")).not.toContain("pooled");
  });
});

test("where correcting stops is marked with how many children, in its quarter", () => {
  const preterm = child("A", "2022-05-10", { gestation: 210 });
  const table = tableOf(program([preterm, child("B", "2022-05-10")], [], { settings: { asOf: "2024-06-30" } }));
  expect(table.notes.join(" ")).toContain("in the program at its end: 2024-Q2 1.");
  const input = program([preterm, child("B", "2022-05-10")], [], { settings: { asOf: "2024-06-30" } });
  const { quarters, sites } = trendOverview(contextFrom(workbookWith(input, {}), entriesOf(input)));
  expect(quarters.filter(({ correctionStops }) => correctionStops > 0)).toEqual([
    { quarter: "2024-Q2", correctionStops: 1 },
  ]);
  expect(sites).toEqual([]);
});
