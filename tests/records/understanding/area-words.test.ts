import { applyChoice } from "../../../src/records/understanding/choices";
import { fromFile, toFile } from "../../../src/records/understanding/file";
import { openQuestions } from "../../../src/records/understanding/understanding";
import { understand } from "../../../src/records/understanding/understand";
import { bookWith, listed, read, sheet } from "../book";

const WORKBOOK = bookWith({
  more: [
    sheet("Refs", [
      ["Child", "Referred", "Area", "To"],
      ["A1", "2025-01-10", "walking", "Clinic"],
      ["A1", "2025-02-10", "Talking", "Clinic"],
      ["A2", "2025-02-11", "talking, play", "Clinic"],
      ["A3", "2025-05-12", "play", "Clinic"],
      ["A3", "2025-05-14", "speech", "Clinic"],
      ["A3", "2025-06-14", "hearing and talking", "Clinic"],
      ["A1", "2025-06-15", "A2", "Clinic"],
      ["A1", "2025-06-16", "not sure yet, mother will call us back", "Clinic"],
    ]),
  ],
});
const UNDERSTOOD = understand(WORKBOOK);

test("everyday words for areas are asked, each once with its count, and never an id or a long text", () => {
  expect(UNDERSTOOD.areas.map(({ word, cells, means }) => [word, cells, means])).toEqual([
    ["Talking", 3, "speech"],
    ["play", 2, null],
    ["walking", 1, "gross motor"],
    ["hearing", 1, "sensory"],
  ]);
  expect(openQuestions(UNDERSTOOD)).toMatchObject({ unsettled: 1 });
});

test("nothing is settled unasked: the referrals are left out, and listed", () => {
  const records = read(WORKBOOK);
  expect(records.referrals?.areas).toEqual([["speech"]]);
  expect(listed(records).filter((each) => each.startsWith("area-unknown"))).toHaveLength(7);
});

test("settled once, it is kept in the file and read next time", () => {
  const confirmed = applyChoice(UNDERSTOOD, { kind: "confirm" });
  const chosen = applyChoice(confirmed, { kind: "area word", word: "play", means: "social-emotional" });
  const file = fromFile(JSON.parse(JSON.stringify(toFile(chosen))));
  if ("messages" in file) throw new Error(file.messages.join(" "));
  const { referrals } = read(WORKBOOK, {}, [...file.decisions]);
  expect(referrals?.areas).toEqual([
    ["gross motor"],
    ["speech"],
    ["speech", "social-emotional"],
    ["social-emotional"],
    ["speech"],
    ["sensory", "speech"],
  ]);
  expect(understand(WORKBOOK, file).areas.map(({ word, means }) => [word, means])).toEqual(
    chosen.areas.map(({ word, means }) => [word, means]),
  );
});
