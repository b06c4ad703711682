import { fewerEdges, proposals } from "../../src/release/proposals";
import { child, look, program, skill } from "../oracle/programs";
import { programDraft, sampleDraft, type SampleDraft } from "./draft/support";

function proposalsOf(draft: SampleDraft, isHidden = (cell: number) => draft.system.cells[cell]!.secret !== null) {
  return proposals({ ...draft, isHidden, settings: draft.estimates.context.settings });
}

test("nothing is proposed where at most half of the counts are hidden", () => {
  const draft = sampleDraft(["met-by-band", "trend"]);
  expect(proposalsOf(draft, () => false)).toEqual([]);
});

test("fewer bands first, then no groups, then areas, each with the setting to use", () => {
  const draft = sampleDraft(["met-by-band"], { by: "Therapist", edges: "0,3,6,9,12,18,24" }, 60);
  const found = proposalsOf(draft, () => true);
  expect(found).toHaveLength(3);
  expect(found[0]).toMatch(
    /^met-by-band: more than half of its counts would be hidden\. Fewer age groups show more: set edges to 0,(6,12,)?24\.$/,
  );
  expect(found[1]).toMatch(/All groups together show more: leave out by \(Therapist\)\.$/);
  expect(found[2]).toMatch(/Areas show more than skills: read the rows with skill "all"/);
});

test("a table without bands, groups or areas has nothing to merge", () => {
  expect(proposalsOf(sampleDraft(["referrals"], {}, 60), () => true)).toEqual([]);
});

test("a proposal holds no count", () => {
  const text = proposalsOf(sampleDraft(["met-by-band"], { by: "Therapist" }, 60), () => true).join(" ");
  expect(text.replace(/edges to [\d,]+/g, "")).not.toMatch(/\d/);
});

/** Six children in each of four bands of three months, all with the skill: 6 is small by 11, 12 in two bands together is not. */
describe("which edges", () => {
  const births = ["2024-05-15", "2024-02-15", "2023-11-15", "2023-08-15"];
  const ids = births.flatMap((birth, at) => Array.from({ length: 6 }, (_, index) => ({ id: `C${at}${index}`, birth })));
  const input = program(
    ids.map(({ id, birth }) => child(id, birth)),
    ids.map(({ id }) => look(id, "2024-06-01", "met")),
    { skills: [skill("sits")] },
  );
  const draft = programDraft(input, ["met-by-band"], { entries: { edges: "0,3,6,9,12", minimumCell: 11 } });

  test("every second edge goes until at most a quarter of the counts are small", () => {
    const settings = { edges: [0, 3, 6, 9, 12], minimumCell: 11 };
    expect(fewerEdges(draft.drafts[0]!, draft.system, settings)).toEqual([0, 6, 12]);
  });

  test("and on, where two bands together are still small", () => {
    const settings = { edges: [0, 3, 6, 9, 12], minimumCell: 13 };
    expect(fewerEdges(draft.drafts[0]!, draft.system, settings)).toEqual([0, 12]);
  });

  test("two edges are not merged further", () => {
    expect(fewerEdges(draft.drafts[0]!, draft.system, { edges: [0, 12], minimumCell: 11 })).toBe(null);
  });
});
