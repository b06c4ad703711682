import fc from "fast-check";
import { checkSystem } from "../../../src/release/draft/check-system";
import { RELEASABLE_IDS } from "../../../src/tables/catalogue";
import { keyOf, partsOfKey } from "../../../src/release/draft/keys";
import type { CountSystem } from "../../../src/release/system";
import { metByBand, metByBandLeft } from "../../../src/tables/met-by-band";
import { reachedByAge } from "../../../src/tables/reached-by-age";
import type { AgeEstimates } from "../../../src/tables/estimates";
import type { Table } from "../../../src/tables/table";
import type { OracleInput } from "../../oracle/input";
import { oracleTables } from "../../oracle/oracle-tables";
import { child, look, program, skill } from "../../oracle/programs";
import { cohortArbitrary } from "../../oracle/random-cohort";
import { DEID } from "../../published/sdc-deid-rules";
import { cellWhere, programDraft, sampleDraft, trueRows } from "./support";

const TABLES: Record<string, (estimates: AgeEstimates) => Table> = {
  "met-by-band": ({ context }) => metByBand(context),
  "met-by-band-left": ({ context }) => metByBandLeft(context),
  "reached-by-age": reachedByAge,
};
const IDS = Object.keys(TABLES);

describe("every child its own family", () => {
  test.each(IDS)("%s: the counts are the table's own, cell by cell, on random programs", (id) => {
    fc.assert(
      fc.property(cohortArbitrary(), (input) => {
        const draft = programDraft(input, [id]);
        const rows = trueRows(draft.drafts[0]!, draft);
        const table = TABLES[id]!(draft.estimates);
        expect(rows).toEqual(
          table.rows.map((row) =>
            Object.fromEntries(
              draft.drafts[0]!.columns.map(({ key }) => [
                key,
                row[table.columns.findIndex((each) => each.key === key)],
              ]),
            ),
          ),
        );
      }),
      { numRuns: 40 },
    );
  });

  test("small is 1 to the threshold less one, and nothing else is secret", () => {
    fc.assert(
      fc.property(cohortArbitrary(), (input) => {
        const plain = programDraft(input, IDS).system.cells.filter(
          ({ key }) => !partsOfKey(key).subject.startsWith("area "),
        );
        const isSmall = (count: number | null) => count !== null && count >= 1 && count <= 4;
        expect(plain.map(({ secret }) => secret)).toEqual(
          plain.map(({ count }) => (isSmall(count) ? { low: 1, high: 4 } : null)),
        );
      }),
      { numRuns: 20 },
    );
  });
});

describe("equations", () => {
  test("hold on random programs, whatever they are grouped by", () => {
    fc.assert(
      fc.property(cohortArbitrary({ maxChildren: 20 }), (input) => {
        const { system } = programDraft(
          input,
          RELEASABLE_IDS.filter((id) => IDS.includes(id)),
        );
        expect(() => checkSystem(system)).not.toThrow();
        expect(new Set(system.cells.map(({ key }) => key)).size).toBe(system.cells.length);
      }),
      { numRuns: 60 },
    );
  });

  test("a total that is not the sum of its parts is refused by the names of its places, without a count", () => {
    const { system } = sampleDraft(["met-by-band"], { by: "Site" }, 60);
    const at = system.cells.findIndex(({ showing, count }) => showing === "table" && (count ?? 0) > 9);
    const planted: CountSystem = {
      ...system,
      cells: system.cells.map((cell, index) => (index === at ? { ...cell, count: 987_654 } : cell)),
    };
    const place = system.cells[at]!.place;
    expect(() => checkSystem(planted)).toThrow(RangeError);
    expect(() => checkSystem(planted)).toThrow(place);
    expect(() => checkSystem(planted)).not.toThrow(/987654|987,654/);
  });

  test("every total over ages and groups is the sum of what a reader sees", () => {
    const draft = sampleDraft(["met-by-band"], { by: "Site" });
    const rows = trueRows(draft.drafts[0]!, draft).filter((row) => row["skill"] === "hand-to-hand");
    const total = (column: string, site?: string) =>
      rows
        .filter((row) => site === undefined || row["Site"] === site)
        .reduce((sum, row) => sum + Number(row[column]), 0);
    const subject = "skill hand-to-hand (corrected)";
    for (const column of ["children", "met", "lost", "notAssessed"]) {
      const own = { ages: "..", column, subject: column === "children" ? "" : subject };
      expect(cellWhere(draft, { ...own, group: "" }).count).toBe(total(column));
      expect(cellWhere(draft, { ...own, group: "Site=North" }).count).toBe(total(column, "North"));
    }
  });
});

/** Twelve children who sit, of the same age, in one site; the code of each one's family. */
function twelve(codes: (index: number) => string): { input: OracleInput; families: () => string[] } {
  const ids = Array.from({ length: 12 }, (_, index) => `C${String(index + 1).padStart(2, "0")}`);
  return {
    input: program(
      ids.map((id) => child(id, "2023-09-10")),
      ids.map((id) => look(id, "2024-06-01", "met")),
      { skills: [skill("sits")] },
    ),
    families: () => ids.map((_, index) => codes(index)),
  };
}

describe("families", () => {
  const settings = { entries: { minimumCell: 11 } };

  test("twelve children of twelve families are not small", () => {
    const { input } = twelve(() => "");
    const { system } = programDraft(input, ["met-by-band"], settings);
    expect(cellWhere({ system }, { subject: "skill sits (chronological)", ages: "9..12", column: "met" }).secret).toBe(
      null,
    );
  });

  test("twelve children of ten families are, up to ten families with two more children", () => {
    const { input, families } = twelve((index) => (index < 3 ? "f1" : ""));
    const draft = programDraft(input, ["met-by-band"], { ...settings, families });
    const met = cellWhere(draft, { subject: "skill sits (chronological)", ages: "9..12", column: "met" });
    expect(met.count).toBe(12);
    expect(met.secret).toEqual({ low: 1, high: 12 });
  });

  test("two skills of the twelve are twenty-four child-skills from twelve families", () => {
    const { input } = twelve(() => "");
    const both = {
      ...input,
      skills: [skill("sits"), skill("stands")],
      observations: [...input.observations, ...input.observations.map((row) => ({ ...row, skill: "stands" }))],
    };
    const { system } = programDraft(both, ["met-by-band"], settings);
    const met = { subject: "area gross motor", ages: "9..12", column: "met" };
    expect(cellWhere({ system }, met)).toMatchObject({ count: 24, secret: null });
    const six = programDraft(both, ["met-by-band"], {
      ...settings,
      families: () => both.children.map((_, i) => `f${i % 6}`),
    });
    expect(cellWhere(six, met)).toMatchObject({ count: 24, secret: { low: 1, high: 10 + 24 - 6 } });
  });

  test("contributors are the families that a plain count over the second implementation finds", () => {
    fc.assert(
      fc.property(
        cohortArbitrary({ maxChildren: 20 }),
        fc.array(fc.constantFrom("f", "g", "h", ""), { minLength: 20, maxLength: 20 }),
        (input, codes) => {
          const plain = { ...input, settings: { ...input.settings, by: [] } };
          const draft = programDraft(plain, ["met-by-band"], { families: (ids) => ids.map((_, at) => codes[at]!) });
          const familyOf = new Map(
            draft.context.cohort.ids.map((id, at) => [id, codes[at] === "" ? id : `family ${codes[at]}`]),
          );
          const rows = oracleTables(plain)["skill-status"].filter(
            ({ box }) => box === "had at first look" || box === "gained here",
          );
          for (const { skill: id } of plain.skills) {
            const own = rows.filter((row) => row["skill"] === id);
            const contributors = new Set(own.map((row) => familyOf.get(String(row["child"])))).size;
            const cells = draft.system.cells.filter(({ key }) => {
              const { subject, ages, column } = partsOfKey(key);
              return subject.startsWith(`skill ${id} `) && ages === ".." && column === "met";
            });
            const expected =
              contributors >= 1 && contributors < 5 ? { low: 1, high: 4 + own.length - contributors } : null;
            expect(cells.map(({ count, secret }) => ({ count, secret }))).toEqual(
              cells.length === 0 ? [] : [{ count: own.length, secret: expected }],
            );
          }
        },
      ),
      { numRuns: 40 },
    );
  });
});

describe("0% and 100% of a group", () => {
  const settings = { minimumCell: 11 };

  test("are listed in words, and not hidden, as usual", () => {
    const { input } = twelve(() => "");
    const { flags, system } = programDraft(input, ["met-by-band"], { entries: settings });
    expect(flags).toContain("met-by-band: sits, 9 to <12 months: all 12, which says the same of every child there.");
    expect(system.cells.every(({ count, secret }) => count !== 0 || secret === null)).toBe(true);
  });

  test("are kept from being proved where they are to be hidden", () => {
    const { input } = twelve(() => "");
    const draft = programDraft(input, ["met-by-band"], { entries: { ...settings, wholeGroups: "hide" } });
    expect(draft.flags).toEqual([]);
    const left = { subject: "skill sits (chronological)", ages: "9..12", column: "without" };
    expect(cellWhere(draft, left)).toMatchObject({ count: 0, secret: { low: 0, high: 0 } });
  });
});

describe("the CMS cell size policy", () => {
  /** A group of so many children who were looked at, of whom so many sit. */
  function group(met: number, of: number) {
    const ids = Array.from({ length: of }, (_, index) => `C${String(index + 1).padStart(2, "0")}`);
    const looks = ids.map((id, index) => look(id, "2024-06-01", index < met ? "met" : "not met"));
    const input = program(
      ids.map((id) => child(id, "2023-09-10")),
      looks,
      { skills: [skill("sits")] },
    );
    const draft = programDraft(input, ["met-by-band"], { entries: { minimumCell: 11 } });
    return (column: string) =>
      cellWhere(draft, { subject: "skill sits (chronological)", ages: "9..12", column }).secret;
  }

  test.each(DEID.cms.values.map((value, at) => [value, DEID.cms.showable[at]] as const))(
    "a count of %i may be shown: %s",
    (value, isShowable) => {
      expect(group(value, value + 20)("met") === null).toBe(isShowable);
    },
  );

  test("21 shown of 30 leave a remainder of 9, which is protected though no table prints it", () => {
    const secretOf = group(DEID.cms.shown, DEID.cms.total);
    expect(secretOf("met")).toBe(null);
    expect(secretOf("without")).toEqual({ low: 1, high: 10 });
  });
});

/** Keys tie releases of different quarters together: a table of skills that was sorted in between must not change them. */
test("the order of the rows of Skills changes no key", () => {
  const skills = [skill("crawls"), skill("walks", { follows: "crawls" }), skill("runs", { follows: "crawls" })];
  const children = [child("A", "2023-09-01"), child("B", "2023-10-01")];
  const keysOf = (order: readonly number[]) =>
    programDraft(
      program(children, [look("A", "2024-05-01", "met", { skill: "crawls" })], {
        skills: order.map((at) => skills[at]!),
      }),
      IDS,
    )
      .system.cells.map(({ key }) => key)
      .sort();
  expect(keysOf([0, 1, 2]).filter((key) => key.includes("replaced by runs, walks")).length).toBeGreaterThan(0);
  for (const order of [
    [2, 1, 0],
    [1, 0, 2],
    [0, 2, 1],
  ])
    expect(keysOf(order)).toEqual(keysOf([0, 1, 2]));
});

test("what may not be released is refused by name", () => {
  const { input } = twelve(() => "");
  expect(() => programDraft(input, ["met-by-band", "skill-status"])).toThrow(
    /^skill-status cannot be released\. These can: /,
  );
});

test("keys can be taken apart whatever a heading, a value or an id is made of", () => {
  const text = fc.oneof(fc.string(), fc.constantFrom("a|b", "a\\", "|", "\\|", "=;", "__proto__", "\n"));
  const parts = fc.record({
    population: text,
    when: text,
    group: text,
    subject: text,
    ages: text,
    column: text,
    tag: text,
  });
  fc.assert(fc.property(parts, (each) => expect(partsOfKey(keyOf(each))).toEqual(each)));
  fc.assert(
    fc.property(parts, parts, (one, other) => {
      fc.pre(JSON.stringify(one) !== JSON.stringify(other));
      expect(keyOf(one)).not.toBe(keyOf(other));
    }),
  );
});
