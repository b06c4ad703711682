import fc from "fast-check";
import { checkSystem } from "../../src/release/draft/check-system";
import type { DraftRelease } from "../../src/release/draft/draft-release";
import { groupText, keyOf, partsOfKey } from "../../src/release/draft/keys";
import type { LedgerEntryBody } from "../../src/release/ledger-entry";
import type { Cell, CountSystem } from "../../src/release/system";
import { tieLedger } from "../../src/release/ties";
import { echoSettings } from "../../src/settings/settings";
import { cohortArbitrary } from "../oracle/random-cohort";
import { DIFFERENCING } from "../published/sdc-handbook-differencing";
import { programDraft, sampleDraft, type SampleDraft } from "./draft/support";

type Info = Pick<LedgerEntryBody, "asOf" | "from" | "tables" | "definition"> & { readonly minimumCell: number };

function isSmall({ secret }: Cell): boolean {
  return secret !== null;
}

/** What the ledger keeps of a release; `isHidden` says which of its cells were hidden. */
function entryOf(
  { system }: Pick<DraftRelease, "system">,
  info: Info,
  isHidden: (cell: Cell) => boolean = () => false,
  rule: Partial<LedgerEntryBody["rule"]> = {},
): LedgerEntryBody {
  const { asOf, from, tables, definition, minimumCell } = info;
  const cells = system.cells.map((cell) => ({
    key: cell.key,
    place: cell.place,
    shown: cell.showing === "never" || isHidden(cell) ? null : cell.count,
  }));
  return {
    asOf,
    from,
    tables,
    definition,
    cells,
    equations: system.equations,
    rule: { minimumCell, method: "hide", base: null, ...rule },
  };
}

function infoOf(draft: SampleDraft): Info {
  const { settings } = draft.estimates.context;
  const echo = echoSettings(settings);
  return {
    asOf: String(echo["asOf"]),
    from: String(echo["from"]),
    tables: draft.drafts.map(({ id }) => id),
    definition: draft.definition,
    minimumCell: settings.minimumCell,
  };
}

/** Small counts were hidden, unless other ones are named. */
function tied(now: SampleDraft, earlier: SampleDraft, isHidden = isSmall) {
  return tieLedger(now.system, [entryOf(earlier, infoOf(earlier), isHidden)], infoOf(now));
}

function cellIn({ cells }: CountSystem, key: string): Cell {
  const found = cells.filter((cell) => cell.key === key);
  if (found.length !== 1) throw new Error(`${found.length} cells are ${key}`);
  return found[0] as Cell;
}

test("without an earlier release nothing is added", () => {
  const draft = sampleDraft(["met-by-band"], {}, 60);
  expect(tieLedger(draft.system, [], infoOf(draft))).toEqual({ system: draft.system, notCovered: [] });
});

describe("published: differencing (Handbook on Statistical Disclosure Control, section 5.2)", () => {
  const info = { asOf: "2026-09-30", from: "2026-01-01", tables: ["referrals"], definition: "", minimumCell: 11 };
  const key = (row: number, column: number, when: string) =>
    keyOf({
      population: "referred",
      when,
      group: groupText([["Site", DIFFERENCING.columns[column]!]]),
      subject: `area ${DIFFERENCING.rows[row]}`,
      ages: "..",
      column: "referrals",
    });

  /** The area within its older borders stands for a year to date, within its newer ones for the part released before. */
  function release(counts: readonly (readonly number[])[], when: string): CountSystem {
    const cells = counts.flatMap((row, r) =>
      row.map((count, c): Cell => ({
        key: key(r, c, when),
        place: `${r}, ${c}`,
        count,
        showing: "table",
        secret: null,
        loss: 1,
      })),
    );
    return { cells, equations: [] };
  }

  const [whole, part, between] = ["2026-01-01..2026-09-30", "2026-01-01..2026-06-30", "2026-07-01..2026-09-30"];
  const entry = entryOf({ system: release(DIFFERENCING.within2001, part!) }, { ...info, asOf: "2026-06-30" });
  const both = tieLedger(release(DIFFERENCING.within1991, whole!), [entry], info);

  test("what lies between the two is a cell of its own, and a small one is protected", () => {
    const found = DIFFERENCING.rows.map((_, r) =>
      DIFFERENCING.columns.map((__, c) => cellIn(both.system, key(r, c, between!))),
    );
    expect(found.map((row) => row.map(({ count }) => count))).toEqual(DIFFERENCING.between);
    expect(found.map((row) => row.map(isSmall))).toEqual([
      [true, true],
      [true, false],
      [false, false],
    ]);
    expect(found.flat().every(({ showing }) => showing === "never")).toBe(true);
  });

  test("by an equation between the two and it", () => {
    const at = (when: string) => both.system.cells.findIndex((cell) => cell.key === key(0, 0, when));
    expect(both.system.equations).toContainEqual({
      terms: [
        { cell: at(whole!), coefficient: 1 },
        { cell: at(part!), coefficient: -1 },
        { cell: at(between!), coefficient: -1 },
      ],
      equals: 0,
    });
    expect(both.system.cells[at(part!)]).toMatchObject({ showing: "out", count: 50 });
  });
});

describe("the same population cut another way", () => {
  const tables = ["met-by-band"];
  const all = sampleDraft(tables);
  const bySite = sampleDraft(tables, { by: "Site" });
  // a skill that others follow names them in its keys
  const sits = all.system.cells
    .map(({ key }) => partsOfKey(key).subject)
    .find((each) => each.startsWith("skill sit-alone "));
  const met = (group: string) => `followed|2026-09-30|${group}|${sits}|9..12|met`;

  test("sites after everybody: what was shown is out, and is the sum of the sites", () => {
    const { system, notCovered } = tied(bySite, all);
    expect(cellIn(bySite.system, met("")).showing).toBe("never");
    expect(cellIn(system, met(""))).toMatchObject({ showing: "out", count: cellIn(all.system, met("")).count });
    expect(notCovered).toEqual([]);
    const index = system.cells.findIndex(({ key }) => key === met(""));
    const sum = system.equations.find(
      ({ terms }) =>
        terms[0]?.cell === index &&
        terms.slice(1).every(({ cell }) => partsOfKey(system.cells[cell]!.key).column === "met"),
    )!;
    expect(sum.terms.slice(1).map(({ cell }) => partsOfKey(system.cells[cell]!.key).group)).toEqual([
      "Site=Hill",
      "Site=North",
      "Site=River",
    ]);
  });

  test("everybody after sites: a site that was hidden is still protected, though nobody here prints it", () => {
    const { system } = tied(all, bySite, ({ key }) => key.includes("Site=North") || key.includes("Site=Hill"));
    const north = cellIn(system, met("Site=North"));
    expect(north).toMatchObject({ count: null, showing: "never", secret: { low: 1, high: 10 } });
    expect(cellIn(system, met("Site=River"))).toMatchObject({ showing: "out" });
  });

  test("therapists after sites are tied by their total, and the sentence says so", () => {
    const byTherapist = sampleDraft(tables, { by: "Therapist", edges: "0,9,12,24" });
    const { system, notCovered } = tied(
      byTherapist,
      bySite,
      ({ key }) => key.includes("Site=North") || key.includes("Site=Hill"),
    );
    const index = system.cells.findIndex(({ key }) => key === met(""));
    const wholes = system.equations.filter(({ terms }) => terms[0]?.cell === index && terms.length > 2);
    const groups = wholes.map(({ terms }) => partsOfKey(system.cells[terms[1]!.cell]!.key).group.split("=")[0]);
    expect(groups).toEqual(expect.arrayContaining(["Site", "Therapist"]));
    expect(notCovered).toEqual([expect.stringMatching(/^Groups by different columns are tied by their totals only/)]);
  });

  test("other edges: the pieces between them are those that a finer cut counts", () => {
    const [one, other] = [sampleDraft(tables, { edges: "0,6,12,24" }), sampleDraft(tables, { edges: "0,5,12,24" })];
    const finer = new Map(
      sampleDraft(tables, { edges: "0,5,6,12,24" }).system.cells.map(({ key, count }) => [key, count]),
    );
    const { system } = tied(one, other, () => false);
    checkSystem(system);
    const pieces = system.cells.filter(({ key }) => partsOfKey(key).ages === "5..6");
    expect(pieces.length).toBeGreaterThan(500);
    expect(pieces.map(({ count }) => count)).toEqual(pieces.map(({ key }) => finer.get(key) ?? 0));
    expect(pieces.some(isSmall)).toBe(true);
    const odd = pieces.filter(({ count, secret }) => (secret !== null) !== (count! > 0 && count! < 11));
    expect(odd).toEqual([]);
  });
});

describe("periods that end on the same day", () => {
  const tables = ["referral-steps", "ratings", "met-by-band-left"];
  const year = sampleDraft(tables, { asOf: "2026-09-30", from: "2025-10-01", edges: [0, 36] });
  const later = sampleDraft(tables, { asOf: "2026-09-30", from: "2025-11-01", edges: [0, 36] });
  const { system, notCovered } = tied(later, year);

  test.each(["referral steps", "rated", "left"])("%s: what lies between is a count, and protected", (population) => {
    checkSystem(system);
    const countOf = new Map([year, later].flatMap((each) => each.system.cells.map(({ key, count }) => [key, count])));
    const pieces = system.cells.filter(({ key }) => {
      const parts = partsOfKey(key);
      return parts.population === population && parts.when === "2025-10-01..2025-10-31";
    });
    const known = pieces.filter(({ count }) => count !== null);
    const over = (key: string, from: string) =>
      countOf.get(keyOf({ ...partsOfKey(key), when: `${from}..2026-09-30` })) ?? 0;
    expect(known.map(({ count }) => count)).toEqual(
      known.map(({ key }) => over(key, "2025-10-01") - over(key, "2025-11-01")),
    );
    expect(known.filter(isSmall).length).toBeGreaterThan(0);
    expect(known.filter(({ count }) => count! > 0 && count! < 11).every(isSmall)).toBe(true);
    expect(notCovered).toEqual([]);
  });

  test("referrals: children of the earlier part alone are a count, and protected", () => {
    const [wide, late] = ["2025-10-01", "2025-11-01"].map((from) =>
      sampleDraft(["referrals"], { asOf: "2026-09-30", from, edges: [0, 36] }),
    );
    const combined = tied(late!, wide!);
    checkSystem(combined.system);
    const pieces = combined.system.cells.filter(({ key }) => {
      const { population, when, column } = partsOfKey(key);
      return population === "referred" && when === "2025-10-01..2025-10-31" && column.startsWith("children");
    });
    const small = pieces.filter(isSmall);
    expect(small.length).toBeGreaterThan(0);
    expect(pieces.filter(({ count }) => count !== null && count > 0 && count < 11).every(isSmall)).toBe(true);
    expect(combined.notCovered).toEqual([
      expect.stringMatching(/children only over periods that end on the same day\.$/),
    ]);
  });

  test("a referral found eligible and without a plan in time is one, since the numbers of both are printed", () => {
    const { cells } = year.system;
    const of = (column: string) =>
      cells.find(({ key }) => key.includes("referral steps") && key.includes(`|${column}|`));
    const [eligible, within] = [of("eligible"), of("plan within 45 days")];
    const rest = of("eligible, not plan within 45 days");
    expect(rest?.count).toBe(eligible!.count! - within!.count!);
    expect(rest?.count).toBeLessThan(11);
    expect(rest?.secret).not.toBeNull();
  });
});

describe("referrals over periods", () => {
  const tables = ["referrals"];
  const toJune = sampleDraft(tables, { asOf: "2026-06-30", from: "2025-10-01" });
  const toSeptember = sampleDraft(tables, { asOf: "2026-09-30", from: "2025-10-01" });
  const summer = sampleDraft(tables, { asOf: "2026-09-30", from: "2026-07-01" });

  test("a year less its first three quarters is the fourth, in every row that was not shown already", () => {
    const { system, notCovered } = tied(toSeptember, toJune, () => false);
    checkSystem(system);
    const fourth = new Map(summer.system.cells.map(({ key, count }) => [key, count]));
    const pieces = system.cells.filter(
      ({ key }) => partsOfKey(key).when === "2026-07-01..2026-09-30" && partsOfKey(key).column === "referrals",
    );
    const kinds = new Set(
      pieces
        .map(({ key }) => partsOfKey(key))
        .map(({ group, subject, ages }) => [group !== "", subject.split(" ")[0], ages === ".."].join()),
    );
    expect([...kinds].sort()).toEqual([
      "false,,false",
      "false,,true",
      "false,area,true",
      "false,from,true",
      "true,,true",
      "true,area,true",
    ]);
    expect(pieces.map(({ count }) => count)).toEqual(pieces.map(({ key }) => fourth.get(key) ?? 0));
    expect(pieces.filter(isSmall).length).toBeGreaterThan(5);
    expect(notCovered).toEqual([
      expect.stringMatching(/^Children in the program or referred in two periods/),
      expect.stringMatching(/^An earlier release showed counts that are small/),
    ]);
  });

  test("quarters that were released one by one add up to the year", () => {
    const quarters = [
      sampleDraft(tables, { asOf: "2025-12-31" }),
      sampleDraft(tables, { asOf: "2026-03-31" }),
      sampleDraft(tables, { asOf: "2026-06-30" }),
    ];
    const entries = quarters.map((draft) => entryOf(draft, infoOf(draft)));
    const { system } = tieLedger(toSeptember.system, entries, infoOf(toSeptember));
    checkSystem(system);
    const year = system.cells.findIndex(
      ({ key }) => key === "referred|2025-10-01..2026-09-30|Site=North|area speech|..|referrals",
    );
    const sum = system.equations.find(({ terms }) => terms[0]?.cell === year && terms.length === 5)!;
    expect(
      sum.terms.slice(1).map(({ cell }) => [system.cells[cell]!.showing, partsOfKey(system.cells[cell]!.key).when]),
    ).toEqual([
      ["out", "2025-10-01..2025-12-31"],
      ["out", "2026-01-01..2026-03-31"],
      ["out", "2026-04-01..2026-06-30"],
      ["never", "2026-07-01..2026-09-30"],
    ]);
  });
});

describe("what cannot be tied", () => {
  const tables = ["met-by-band"];
  const now = sampleDraft(tables, {}, 60);

  test("records changed since: the figure and what hangs on it stay out, and nothing contradicts", () => {
    const before = entryOf(now, infoOf(now), (cell) => isSmall(cell) || !cell.key.includes("|9..12|"));
    const at = before.cells.findIndex(({ key, shown }) => key.endsWith("|9..12|met") && shown !== null);
    const cells = before.cells.map((cell, index) =>
      index === at ? { ...cell, shown: (cell.shown as number) + 1 } : cell,
    );
    const { system, notCovered } = tieLedger(now.system, [{ ...before, cells }], infoOf(now));
    checkSystem(system);
    expect(system.cells[at]).toMatchObject({ showing: "table", count: now.system.cells[at]!.count });
    expect(notCovered).toEqual([expect.stringMatching(/^Records changed since an earlier release/)]);
  });

  test("other dates, other settings, rounding: a sentence each, and no tie", () => {
    const earlier = sampleDraft(tables, { asOf: "2026-06-30", recheck: 60 }, 60);
    const entry = entryOf(earlier, infoOf(earlier), () => false, { method: "round", base: 5 });
    const { system, notCovered } = tieLedger(now.system, [entry], infoOf(now));
    expect(system).toEqual(now.system);
    expect(notCovered).toEqual([
      expect.stringMatching(/^Between two as-of dates/),
      expect.stringMatching(/^An earlier release counted with other settings/),
      expect.stringMatching(/^An earlier release was rounded/),
    ]);
  });

  test("counts under other settings are not the same counts", () => {
    const other = sampleDraft(tables, { recheck: 60 }, 60);
    const { system } = tied(now, other, () => true);
    const ties = system.cells.slice(now.system.cells.length).map(({ key }) => partsOfKey(key).tag);
    expect(new Set(ties)).toEqual(new Set(["recheck=60"]));
    const shared = other.system.cells.filter(({ key }) => now.system.cells.some((cell) => cell.key === key));
    expect(new Set(shared.map(({ key }) => partsOfKey(key).column))).toEqual(new Set(["children"]));
  });

  test("a count shown under a lower threshold is known, and the sentence says so", () => {
    const earlier = sampleDraft(tables, { minimumCell: 5 }, 60);
    const { system, notCovered } = tied(now, earlier, isSmall);
    const open = system.cells.filter(
      ({ key, showing }) => showing === "out" && isSmall(now.system.cells.find((cell) => cell.key === key)!),
    );
    expect(open.length).toBeGreaterThan(0);
    expect(open.every(({ secret }) => secret === null)).toBe(true);
    expect(notCovered).toEqual([expect.stringMatching(/^An earlier release showed counts that are small/)]);
  });
});

test("random programs: the true counts satisfy every equation of two releases together", () => {
  const cuts = fc.record({
    by: fc.constantFrom([], ["Site"], ["Therapist"], ["Site", "Therapist"]),
    edges: fc.constantFrom([0, 6, 12, 24], [0, 5, 12, 24], [3, 9], [0, 3, 6, 9, 12, 18, 24, 36]),
  });
  const hides = fc.array(fc.boolean(), { minLength: 7, maxLength: 7 });
  fc.assert(
    fc.property(cohortArbitrary({ maxChildren: 12 }), cuts, cuts, hides, (input, one, other, hidden) => {
      const tables = ["met-by-band", "reached-by-age"];
      const now = programDraft(input, tables, { entries: { ...one } });
      const earlier = programDraft(input, tables, { entries: { ...other } });
      const finest = programDraft(input, tables, {
        entries: { ...other, edges: [0, 3, 5, 6, 9, 12, 18, 24, 36], by: ["Site", "Therapist"] },
      });
      const truth = new Map([...finest.system.cells, ...earlier.system.cells].map(({ key, count }) => [key, count]));
      const isHidden = ({ key }: Cell) => hidden[key.length % 7] as boolean;
      const { system, notCovered } = tied(now, earlier, isHidden);
      const changed = notCovered.filter((sentence) => sentence.startsWith("Records changed"));
      expect(changed).toEqual([]);
      const odd = system.cells.filter(({ key, count }) => count !== null && truth.has(key) && truth.get(key) !== count);
      expect(odd).toEqual([]);
      checkSystem({
        ...system,
        cells: system.cells.map((cell) => ({ ...cell, count: cell.count ?? truth.get(cell.key) ?? null })),
      });
      const keys = system.cells.map(({ key }) => key);
      expect(new Set(keys).size).toBe(keys.length);
    }),
    { numRuns: 25 },
  );
});

test("a row of an earlier release that said 1 or more still says so", () => {
  const draft = sampleDraft(["met-by-band"], { by: "Site" }, 60);
  const everybody = sampleDraft(["met-by-band"], {}, 60);
  const entry = entryOf(draft, infoOf(draft), () => true);
  const cells = entry.cells.map((cell) => (cell.key.includes("|children") ? { ...cell, atLeast: 1 } : cell));
  const { system } = tieLedger(everybody.system, [{ ...entry, cells }], infoOf(everybody));
  const sites = system.cells.filter(
    ({ key, count }) => key.includes("|Site=") && key.endsWith("|children") && count === null,
  );
  expect(sites.length).toBeGreaterThan(0);
  expect(sites.every(({ atLeast }) => atLeast === 1)).toBe(true);
});
