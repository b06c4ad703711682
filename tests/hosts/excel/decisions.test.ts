import fc from "fast-check";
import { parseDecisions } from "../../../src/records/corrections/decisions";
import { decisionSheet, decisionsOf } from "../../../src/hosts/excel/decision-rows";
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

const NAME = "Windowline decisions";

test("no decisions yet is null", async () => {
  expect(await hasty().loadDecisions()).toBeNull();
});

test("decisions come back as they were saved, as plain rows of a sheet", async () => {
  await hasty().saveDecisions(DECISIONS);
  expect(await hasty().loadDecisions()).toEqual(DECISIONS);
  expect(parseDecisions(await hasty().loadDecisions())).toEqual(DECISIONS);
  const sheet = book.sheets[1];
  expect(sheet?.name).toBe(NAME);
  expect([0, 1, 2].map((column) => sheet?.valueAt(1, column))).toEqual(["Decision", "Revoked", "Table"]);
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
  expect(parsed).toEqual({ messages: ["Decision 1: revoked must be true or false."] });
});

test("ids that a person typed as numbers are texts", async () => {
  await hasty().saveDecisions(DECISIONS);
  book.sheets[1]?.put(2, 3, 17);
  const { decisions } = (await hasty().loadDecisions()) as typeof DECISIONS;
  expect(decisions[0]).toEqual({ kind: "same-child", child: "17", alias: "001" });
});

test("a shorter list leaves no row of the longer one, and what stands beside it stays", async () => {
  await hasty().saveDecisions(DECISIONS);
  book.sheets[1]?.put(4, 12, "my note");
  await hasty().saveDecisions({ decisions: DECISIONS.decisions.slice(2, 3) });
  expect(await hasty().loadDecisions()).toEqual({ decisions: DECISIONS.decisions.slice(2, 3) });
  expect(book.sheets[1]?.valueAt(4, 12)).toBe("my note");
  expect(book.sheets).toHaveLength(2);
  await hasty().saveDecisions({ decisions: [] });
  expect(await hasty().loadDecisions()).toEqual({ decisions: [] });
});

test("a failure while saving loses no decision", async () => {
  await hasty().saveDecisions(DECISIONS);
  const host = openInOffice(book);
  host.plant = (member) => {
    if (member === "Range.Clear") book.editingRequests = 1000;
  };
  await hasty()
    .saveDecisions({ decisions: DECISIONS.decisions.slice(0, 3) })
    .catch(() => undefined);
  book.editingRequests = 0;
  host.plant = () => undefined;
  const { decisions } = (await hasty().loadDecisions()) as typeof DECISIONS;
  expect(decisions.slice(0, 3)).toEqual(DECISIONS.decisions.slice(0, 3));
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
  const decision = fc.record({ kind: word, child: word, alias: word }, { requiredKeys: ["kind"] });
  const revocable = fc
    .tuple(decision, fc.option(fc.boolean(), { nil: undefined }))
    .map(([each, revoked]) => (revoked === undefined ? each : { ...each, revoked }));
  fc.assert(
    fc.property(fc.array(revocable, { maxLength: 5 }), (decisions) => {
      const rows = decisionSheet(decisions).rows.map((row) =>
        row.map((cell) => (typeof cell === "object" && cell !== null ? cell.value : cell)),
      );
      expect(decisionsOf(rows)).toEqual({ decisions });
    }),
  );
});
