import { attack } from "../../src/release/attack";
import { knowledgeOf } from "../../src/release/knowledge";
import type { LedgerEntryBody } from "../../src/release/ledger-entry";
import type { Solver } from "../../src/release/linear-model";
import type { CountSystem } from "../../src/release/system";
import { appendEntry, EMPTY_LEDGER, type Ledger } from "../../src/release/ledger";
import { makeSample } from "../../src/sample/make-sample";
import { sampleSheets } from "../../src/sample/sample-sheets";
import { asRead } from "../sample/as-read";
import { readRecords } from "../../src/records/read-records";
import { prepareRelease, type ReleaseAsk } from "../../src/report/prepare-release";
import { parseSettings, type Settings } from "../../src/settings/settings";
import { settingsOf } from "./audit/audit";
import { caseOf, release } from "./audit/cases";
import { LAST_DAY, randomProgram, workbookOf } from "./audit/random-program";
import { loadSolver } from "./load";

let solver: Solver;
beforeAll(async () => {
  solver = await loadSolver();
});

describe("what cannot be released", () => {
  const program = randomProgram(0, { mostSkills: 2, mostChildren: 110 });
  const ask = {
    entries: { asOf: LAST_DAY, from: "2026-10-01", edges: [12, 24], by: ["Site"] },
    tables: ["met-by-band"] as const,
  };

  test("small counts that an earlier release gives away are refused by their places, without a count", () => {
    const all = release(program, { ...caseOf(0), asks: [ask] }, solver, { settings: { minimumCell: 1, floor: 1 } });
    const shown = all.ledger.entries[0]!.body;
    const at = shown.cells.findIndex(
      ({ shown: count, place }) => count !== null && count > 0 && count < 5 && /not met$/.test(place),
    );
    // everything of that row is out but one small box, which follows from the rest
    const body: LedgerEntryBody = {
      ...shown,
      cells: shown.cells.map((cell, index) => (index === at ? { ...cell, shown: null } : cell)),
    };
    const settings = settingsOf({ ...ask.entries, minimumCell: 11 });
    const ledger = { entries: [{ body, hash: "" }] };
    const found = prepareRelease(readRecords(workbookOf(program), settings, []), {
      settings,
      tables: ask.tables,
      ledger,
      solver,
    });
    if (!("places" in found)) throw new Error("it was not refused");
    const places = new Set(shown.cells.map(({ place }) => place));
    expect(found.places.length).toBeGreaterThan(0);
    expect(found.places.filter(({ place }) => !places.has(place))).toEqual([]);
    for (const { repair } of found.places) expect(repair).toMatch(/^[A-Z][^.]*\.$/);
  });

  test("a threshold below the floor is one sentence", () => {
    const parsed = parseSettings({ asOf: LAST_DAY, minimumCell: 3 }, 1900);
    expect(parsed).toEqual({
      messages: ["minimumCell must be a whole number of children from 5 (the floor) to 1000."],
    });
  });

  test.each([NaN, Infinity, -1, 2.5, "x"])("a minimum of %p is one sentence", (minimumCell) => {
    const parsed = parseSettings({ asOf: LAST_DAY, minimumCell }, 1900);
    expect("messages" in parsed && parsed.messages.length).toBe(1);
  });

  test("a count of an earlier release that nobody here knows may stand far above the threshold", () => {
    const cell = (key: string, count: number | null, showing: "table" | "never" | "out", isSmall: boolean) => ({
      ...{ key, place: key, count, showing, loss: 1 },
      secret: isSmall || count === null ? { low: 1, high: 10 } : null,
    });
    const system: CountSystem = {
      cells: [
        cell("total", 60, "out", false),
        cell("hidden then", null, "never", false),
        cell("small", 4, "table", true),
        cell("rest", 6, "table", true),
        cell("of both", 10, "out", false),
      ],
      equations: [
        {
          terms: [
            { cell: 0, coefficient: 1 },
            { cell: 1, coefficient: -1 },
            { cell: 2, coefficient: -1 },
            { cell: 3, coefficient: -1 },
          ],
          equals: 0,
        },
        {
          terms: [
            { cell: 4, coefficient: 1 },
            { cell: 2, coefficient: -1 },
            { cell: 3, coefficient: -1 },
          ],
          equals: 0,
        },
      ],
    };
    const { disclosures, witnesses } = attack(system, knowledgeOf(system, Uint8Array.of(0, 1, 1, 1, 0)), solver);
    expect(disclosures).toEqual([]);
    expect(witnesses.length).toBeGreaterThan(0);
  });
});

describe("an unchanged workbook, released again and again", () => {
  const sample = makeSample({ children: 240, seed: 7 });
  const book = asRead(sampleSheets(sample));
  const released = (settings: Settings, ask: Omit<ReleaseAsk, "settings">) =>
    prepareRelease(readRecords(book, settings, []), { settings, ...ask });
  const asks = [
    { from: "2026-07-01", asOf: "2026-09-30" },
    { from: "2026-01-01", asOf: "2026-09-30" },
    { from: "2026-01-01", asOf: "2026-06-30" },
    { from: "2025-10-01", asOf: "2026-09-30", edges: "0,12,24,36" },
  ];

  test("referrals of four periods, the last one with other bands: nothing is taken for a change of the records", () => {
    let ledger: Ledger = EMPTY_LEDGER;
    for (const entries of asks) {
      const options = { tables: ["referrals"] as const, ledger, solver };
      const found = released(settingsOf(entries), options);
      if ("places" in found) throw new Error(found.proposals.join(" "));
      expect(found.notCovered.filter((sentence) => sentence.startsWith("Records changed"))).toEqual([]);
      ledger = appendEntry(ledger, found.entry);
    }
    expect(ledger.entries).toHaveLength(asks.length);
  });

  test("a solver that gives no answer is not told as a change of the records", () => {
    const silent: Solver = (model, limits) => ({ ...solver(model, limits), status: "stopped" });
    const options = { tables: ["referrals"] as const, ledger: EMPTY_LEDGER, solver: silent };
    const found = released(settingsOf(asks[0]!), options);
    expect(found).toEqual({
      places: [],
      proposals: [expect.stringMatching(/^The test of this release .* without an answer/)],
    });
  });

  test("children of the as-of date are tied to those of its quarter", () => {
    const options = { tables: ["met-by-band", "referrals"] as const, ledger: EMPTY_LEDGER, solver };
    const found = released(settingsOf(asks[1]!), { ...options, isTimeUp: () => true });
    if ("places" in found) throw new Error(found.proposals.join(" "));
    const { cells, equations } = found.entry;
    const at = (start: string) => cells.findIndex(({ key }) => key.startsWith(start));
    const ends = [at("referred|2026-07-01..2026-09-30|||..|children"), at("followed|2026-09-30|||..|children")];
    expect(ends).not.toContain(-1);
    const tied = equations.filter(({ terms }) => ends.every((cell) => terms.some((term) => term.cell === cell)));
    expect(tied).toHaveLength(1);
  });
});
