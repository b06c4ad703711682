import fc from "fast-check";
import { parseDecisions } from "../../../src/records/corrections/decisions";
import { correctionsSheet, listOf, rowsOn } from "../../../src/hosts/excel/corrections/sheet-rows";
import { openInOffice } from "../../office/office-globals";
import { startOffice } from "../../office/in-node";
import { MemoryWorkbook } from "../../office/workbook/memory-workbook";
import { failureOf, hasty, job } from "./support";

beforeAll(() => startOffice());

let book: MemoryWorkbook;

beforeEach(() => {
  book = new MemoryWorkbook();
  book.addSheet("Children").put(0, 0, "Child");
  openInOffice(book);
});

const DECISIONS = {
  decisions: [
    { kind: "same-child", child: "AF-001", alias: "001" },
    { kind: "skill-alias", skill: "Sits alone", alias: "=sit" },
    { kind: "date-order", table: "Observations", column: "Date", order: "day first", revoked: true },
    { kind: "heading", table: "Children", heading: "Born", means: "birth", revoked: false },
  ],
};

const NAME = "Windowline corrections";

/** The sheet's rows below the headings, as they stand. */
const rows = (sheet = book.sheets[1]!) =>
  Array.from({ length: (sheet.usedArea()?.bottom ?? 1) - 1 }, (_, at) =>
    Array.from({ length: (sheet.usedArea()?.right ?? 0) + 1 }, (__, column) => sheet.valueAt(at + 2, column) ?? ""),
  );

test("no decisions yet is null", async () => {
  expect(await hasty().loadDecisions()).toBeNull();
});

test("decisions come back as they were saved, as plain rows of a sheet", async () => {
  await hasty().saveDecisions(DECISIONS);
  expect(await hasty().loadDecisions()).toEqual(DECISIONS);
  expect(parseDecisions(await hasty().loadDecisions())).toEqual(DECISIONS);
  const sheet = book.sheets[1];
  expect(sheet?.name).toBe(NAME);
  expect([0, 1, 2].map((column) => sheet?.valueAt(1, column))).toEqual(["Correction", "Revoked", "Table"]);
  expect(sheet?.valueAt(2, 5)).toBe("001");
  expect(sheet?.formulas.size).toBe(0);
  expect(sheet?.visibility).toBe("Visible");
});

test.each(["yes", "Yes ", "TRUE", "x", true])("a person revokes by writing %j", async (word) => {
  await hasty().saveDecisions(DECISIONS);
  book.sheets[1]?.put(2, 1, word);
  const { decisions } = (await hasty().loadDecisions()) as typeof DECISIONS;
  expect(decisions[0]).toEqual({ ...DECISIONS.decisions[0], revoked: true });
});

test("another word under Revoked is left for the message of the decisions", async () => {
  await hasty().saveDecisions(DECISIONS);
  book.sheets[1]?.put(2, 1, "perhaps");
  const parsed = parseDecisions(await hasty().loadDecisions());
  expect(parsed).toEqual({ messages: ["Correction 1: revoked must be true or false."] });
});

test("ids that a person typed as numbers are texts", async () => {
  await hasty().saveDecisions(DECISIONS);
  book.sheets[1]?.put(2, 3, 17);
  const { decisions } = (await hasty().loadDecisions()) as typeof DECISIONS;
  expect(decisions[0]).toEqual({ kind: "same-child", child: "17", alias: "001" });
});

describe("the sheet belongs to the person too", () => {
  const ALIAS = { kind: "skill-alias", skill: "Sits alone", alias: "sits up" };

  beforeEach(() => hasty().saveDecisions(DECISIONS));

  test("revoking writes one cell, and taking up again writes one", async () => {
    const excel = hasty();
    const { decisions } = (await excel.loadDecisions()) as typeof DECISIONS;
    const before = rows();
    await excel.saveDecisions({ decisions: decisions.map((each, at) => ({ ...each, revoked: at === 1 || at === 2 })) });
    expect(rows()).toEqual(before.map((cells, at) => (at === 1 ? [cells[0], "yes", ...cells.slice(2)] : cells)));
    await excel.saveDecisions({ decisions });
    expect(rows()[1]?.[1]).toBe("");
    expect(rows().filter((_, at) => at !== 1)).toEqual(before.filter((_, at) => at !== 1));
  });

  test("a row typed by hand is read, and stays when another is kept", async () => {
    const excel = hasty();
    const known = (await excel.loadDecisions()) as typeof DECISIONS;
    ["Skill alias", "", "", "", "Sits alone", "sits up"].forEach((value, column) =>
      book.sheets[1]?.put(6, column, value === "" ? undefined : value),
    );
    const added = { kind: "same-child", child: "AF-002", alias: "002" };
    await excel.saveDecisions({ decisions: [...known.decisions, added] });
    expect(await excel.loadDecisions()).toEqual({ decisions: [...DECISIONS.decisions, ALIAS, added] });
    expect(rows()[4]?.[0]).toBe("Skill alias");
  });

  test("a row that a person changed or deleted meanwhile is not brought back", async () => {
    const excel = hasty();
    const known = (await excel.loadDecisions()) as typeof DECISIONS;
    book.sheets[1]?.put(2, 3, "AF-007");
    for (let column = 0; column < 10; column += 1) book.sheets[1]?.put(3, column, undefined);
    await excel.saveDecisions({ decisions: [...known.decisions, ALIAS] });
    const { decisions } = (await excel.loadDecisions()) as typeof DECISIONS;
    expect(decisions).toEqual([{ ...DECISIONS.decisions[0], child: "AF-007" }, ...DECISIONS.decisions.slice(2), ALIAS]);
  });

  test("columns that were inserted, moved or renamed keep what is in them", async () => {
    const sheet = book.sheets[1]!;
    const standing = [1, ...rows().keys()].map((_, at) =>
      Array.from({ length: 10 }, (__, c) => sheet.valueAt(at + 1, c)),
    );
    standing.forEach((cells, at) => {
      // a column of their own first, then Means, then the rest; Order of dates under a name of their own
      const moved = [`note ${at}`, cells[9], ...cells.slice(0, 9)];
      moved.forEach((value, column) => sheet.put(at + 1, column, value));
    });
    sheet.put(1, 0, "My notes");
    const excel = hasty();
    expect(await excel.loadDecisions()).toEqual(DECISIONS);
    sheet.put(1, 8, "Day or month first");
    sheet.put(2, 11, "far right");
    for (let column = 1; column < 11; column += 1) sheet.put(4, column, undefined);
    sheet.put(4, 8, "kept");
    await excel.saveDecisions({ decisions: [DECISIONS.decisions[0], ALIAS] });
    expect([0, 1, 2, 3].map((at) => sheet.valueAt(at + 2, 0))).toEqual(["note 1", "note 2", "note 3", "note 4"]);
    expect([sheet.valueAt(4, 8), sheet.valueAt(2, 11), sheet.valueAt(6, 0)]).toEqual(["kept", "far right", undefined]);
    const { decisions } = (await excel.loadDecisions()) as typeof DECISIONS;
    expect(decisions.at(-1)).toEqual(ALIAS);
  });

  test("a column that a row needs and that lost its heading is named, and nothing is written", async () => {
    book.sheets[1]?.put(1, 7, "Order");
    const failure = await failureOf(hasty().loadDecisions());
    expect(failure).toEqual({ kind: "unreadable", message: expect.stringContaining("no column “Order of dates”") });
    const before = book.sheets[1]?.snapshot();
    expect((await failureOf(hasty().saveDecisions({ decisions: [ALIAS] }))).kind).toBe("unreadable");
    expect(book.sheets[1]?.snapshot()).toBe(before);
  });

  test("a sheet without its headings is said, and nothing is written", async () => {
    for (let column = 0; column < 10; column += 1) book.sheets[1]?.put(1, column, undefined);
    const failure = await failureOf(hasty().loadDecisions());
    expect(failure).toEqual({ kind: "unreadable", message: expect.stringContaining("lost its headings") });
    expect((await failureOf(hasty().saveDecisions({ decisions: [] }))).kind).toBe("unreadable");
  });

  test("rows above the headings move them, and notes below the last row are not written over", async () => {
    const sheet = book.sheets[1]!;
    for (let row = 5; row >= 1; row -= 1) {
      for (let column = 0; column < 10; column += 1) {
        sheet.put(row + 2, column, sheet.valueAt(row, column));
        if (row < 3) sheet.put(row, column, undefined);
      }
    }
    sheet.put(20, 0, undefined);
    sheet.put(20, 14, "a note");
    const excel = hasty();
    await excel.loadDecisions();
    await excel.saveDecisions({ decisions: [...DECISIONS.decisions, ALIAS] });
    expect(await excel.loadDecisions()).toEqual({ decisions: [...DECISIONS.decisions, ALIAS] });
    expect([sheet.valueAt(20, 14), sheet.valueAt(21, 0)]).toEqual(["a note", "skill-alias"]);
  });

  test("a row that cannot be read is out of the way once it is revoked", async () => {
    book.sheets[1]?.put(6, 0, "guess");
    expect(parseDecisions(await hasty().loadDecisions())).toHaveProperty("messages");
    book.sheets[1]?.put(6, 1, "yes");
    expect(await hasty().loadDecisions()).toEqual(DECISIONS);
  });

  test("who starts again without corrections has them revoked, not erased", async () => {
    const excel = hasty();
    await excel.loadDecisions();
    await excel.saveDecisions({ decisions: [] });
    const { decisions } = (await excel.loadDecisions()) as { decisions: { revoked?: boolean }[] };
    expect(decisions.map(({ revoked }) => revoked)).toEqual([true, true, true, true]);
  });

  test("corrections that a save leaves out stay in force where one is kept", async () => {
    const excel = hasty();
    await excel.loadDecisions();
    await excel.saveDecisions({ decisions: DECISIONS.decisions.slice(0, 1) });
    expect(await excel.loadDecisions()).toEqual(DECISIONS);
  });

  test("a failure while keeping one leaves all that stood", async () => {
    const excel = hasty();
    await excel.loadDecisions();
    for (let request = 0; request < 4; request += 1) {
      for (const at of ["before", "halfway", "after"] as const) {
        const host = openInOffice(book);
        host.fault = (asked) => (asked === request ? { at, code: "GeneralException" } : null);
        const more = { ...ALIAS, alias: `sits ${request} ${at}` };
        await failureOf(excel.saveDecisions({ decisions: [...DECISIONS.decisions, more] }));
        host.fault = () => null;
        const { decisions } = (await hasty().loadDecisions()) as typeof DECISIONS;
        expect(decisions.slice(0, 4)).toEqual(DECISIONS.decisions);
        expect(parseDecisions({ decisions })).not.toHaveProperty("messages");
      }
    }
  });
});

describe("how the workbook is understood is kept on the same sheet", () => {
  const headings = [
    { heading: "DOB", means: "Birth date" },
    { heading: "Sits", skill: "sits" },
    { heading: "Fax", means: null },
  ];
  const WORD = { kind: "word", word: "oui", means: "met" };
  const NAME_ROW = { kind: "name", column: "Site", spelling: "N. Ridge", means: "North Ridge" };
  const UNDERSTOOD = [
    ...DECISIONS.decisions,
    { kind: "sheet", sheet: "Kids", is: "children", headerRows: [1, 2], headings },
    { kind: "sheet", sheet: "Kids", is: "not used", headerRows: [40], headings: [] },
    { ...WORD },
    { kind: "word", word: "", means: null },
    NAME_ROW,
    { kind: "skill", skill: "sits", label: "Sits alone", opens: 5.5, closes: null, expectedShare: 0.9 },
  ];

  test("and comes back the same, in a form that the records take", async () => {
    await hasty().saveDecisions({ decisions: UNDERSTOOD });
    expect(await hasty().loadDecisions()).toEqual({ decisions: UNDERSTOOD });
    expect(parseDecisions(await hasty().loadDecisions())).toEqual({ decisions: UNDERSTOOD });
  });

  test("beside corrections that were there: a new meaning is one cell, and what is left out is revoked", async () => {
    await hasty().saveDecisions(DECISIONS);
    const excel = hasty();
    await excel.loadDecisions();
    await excel.saveDecisions({ decisions: UNDERSTOOD });
    expect(await excel.loadDecisions()).toEqual({ decisions: UNDERSTOOD });
    const before = rows();
    const changed = UNDERSTOOD.filter((each) => each !== NAME_ROW).map((each) =>
      each.kind === "word" && "word" in each && each.word === "oui" ? { ...each, means: "emerging" } : each,
    );
    await excel.saveDecisions({ decisions: changed });
    const differs = rows().flatMap((cells, r) => cells.flatMap((cell, c) => (cell === before[r]?.[c] ? [] : [cell])));
    expect(differs.sort()).toEqual(["emerging", "yes"]);
    await excel.saveDecisions({ decisions: UNDERSTOOD });
    expect(rows()).toEqual(before);
  });

  test("and corrections alone leave it as it is", async () => {
    const excel = hasty();
    await excel.saveDecisions({ decisions: UNDERSTOOD });
    await excel.saveDecisions(DECISIONS);
    expect(await excel.loadDecisions()).toEqual({ decisions: UNDERSTOOD });
  });
});

describe("which sheet is in force", () => {
  test("one that was renamed, after the workbook was opened again", async () => {
    await hasty().saveDecisions(DECISIONS);
    book.sheets[1]!.name = "Our rules";
    book = book.reopened();
    openInOffice(book);
    expect(await hasty().loadDecisions()).toEqual(DECISIONS);
  });

  test("a copy does not count, under whatever names", async () => {
    await hasty().saveDecisions(DECISIONS);
    const copy = book.copySheet(book.sheets[1]!);
    copy.put(2, 1, "yes");
    [book.sheets[1]!.name, copy.name] = ["Our rules", NAME];
    book = book.reopened();
    openInOffice(book);
    expect(await hasty().loadDecisions()).toEqual(DECISIONS);
  });

  test("two that nothing tells apart are said, and neither is written", async () => {
    await hasty().saveDecisions(DECISIONS);
    book.copySheet(book.sheets[1]!);
    [book.sheets[1]!.name, book.sheets[2]!.name] = ["One", "Other"];
    book = book.reopened();
    book.names.clear();
    openInOffice(book);
    const failure = await failureOf(hasty().loadDecisions());
    expect(failure).toEqual({ kind: "unreadable", message: expect.stringContaining("One and Other") });
    expect((await failureOf(hasty().saveDecisions({ decisions: [] }))).kind).toBe("unreadable");
  });

  test("the sheet of version 0.1.0, by its mark, and by its name and headings", async () => {
    await hasty().saveDecisions(DECISIONS);
    const sheet = book.sheets[1]!;
    book.names.clear();
    sheet.name = "Windowline decisions";
    sheet.put(1, 0, "Decision");
    const mark = { kind: "decisions", run: 0, label: "", name: "Windowline decisions", id: "{OLD}" };
    sheet.customProperties.set("Windowline", JSON.stringify(mark));
    expect(await hasty().loadDecisions()).toEqual(DECISIONS);
    sheet.customProperties.clear();
    expect(await hasty().loadDecisions()).toEqual(DECISIONS);
  });
});

test("a sheet of the same name that the user made is neither read nor written", async () => {
  const own = book.addSheet(NAME);
  own.put(1, 0, "Decision");
  const before = own.snapshot();
  expect(await hasty().loadDecisions()).toBeNull();
  await hasty().saveDecisions(DECISIONS);
  expect(own.snapshot()).toBe(before);
  expect(book.sheets.map(({ name }) => name)).toEqual(["Children", NAME, `${NAME} (2)`]);
  expect(await hasty().loadDecisions()).toEqual(DECISIONS);
});

test("the sheet is known by its headings where another program dropped its mark", async () => {
  await hasty().saveDecisions(DECISIONS);
  book.sheets[1]?.customProperties.clear();
  expect(await hasty().loadDecisions()).toEqual(DECISIONS);
  await hasty().saveDecisions({ decisions: [] });
  expect(book.sheets).toHaveLength(2);
});

test("decisions are no records, and no part of a run", async () => {
  await hasty().saveDecisions(DECISIONS);
  const { sheets } = await hasty().read(job());
  expect(sheets.map(({ name }) => name)).toEqual(["Children"]);
  expect(await hasty().receipts()).toEqual([]);
});

test("a protected structure is said", async () => {
  book.isStructureProtected = true;
  expect((await failureOf(hasty().saveDecisions(DECISIONS))).kind).toBe("locked");
});

test.each([null, 3, {}, { decisions: "x" }, [{ kind: "same-child", __proto__x: 1 }]])(
  "%j is no list of decisions",
  async (wrong) => {
    await expect(hasty().saveDecisions(wrong)).rejects.toThrow(RangeError);
    expect(book.sheets).toHaveLength(1);
  },
);

test("rows and decisions say the same, for any words", () => {
  const word = fc.string({ unit: "grapheme", minLength: 1 }).filter((text) => text.trim() === text && text !== "");
  // Of a kind that nothing is known about: once revoked, nobody reads it.
  const kind = fc.constant("other");
  const decision = fc.record({ kind, child: word, alias: word }, { requiredKeys: ["kind"] });
  const revocable = fc
    .tuple(decision, fc.option(fc.boolean(), { nil: undefined }))
    .map(([each, revoked]) => (revoked === undefined ? each : { ...each, revoked }));
  fc.assert(
    fc.property(fc.array(revocable, { maxLength: 5 }), (decisions) => {
      const cells = correctionsSheet(listOf({ decisions })).rows.map((row) =>
        row.map((cell) => (typeof cell === "object" && cell !== null ? cell.value : cell)),
      );
      const isInForce = (each: object) => !("revoked" in each && each.revoked);
      expect(rowsOn(cells, NAME).map(({ row }) => row)).toEqual(decisions.filter(isInForce));
    }),
  );
});
