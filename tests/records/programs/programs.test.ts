import { fromFile, toFile } from "../../../src/records/understanding/file";
import { openQuestions } from "../../../src/records/understanding/understanding";
import { understand } from "../../../src/records/understanding/understand";
import { figuresOf, planOf, readWith, settle } from "./figures";
import { MORE_PROGRAMS } from "./more-workbooks";
import { truthOf } from "./plan";
import { PROGRAMS } from "./workbooks";

const MOST_ACTS = 20;
const SEEDS = [7, 20];

describe.each([...PROGRAMS, ...MORE_PROGRAMS])("$name", (program) => {
  test.each(SEEDS)("gives the figures of the plan with under twenty choices (plan %i)", (seed) => {
    const plan = planOf(program, seed);
    const workbook = program.workbook(plan);
    const { settled, acts } = settle(program, understand(workbook));
    expect(acts).toBeLessThan(MOST_ACTS);
    expect(openQuestions(settled)).toEqual({ doubtful: 0, unsettled: 0 });
    const records = readWith(workbook, settled);
    expect(figuresOf(records, plan)).toEqual(truthOf(plan));
  });

  test("is understood again from the file alone", () => {
    const workbook = program.workbook(planOf(program, 7));
    const { settled } = settle(program, understand(workbook));
    const file = fromFile(JSON.parse(JSON.stringify(toFile(settled))));
    if ("messages" in file) throw new Error(file.messages.join(" "));
    const again = understand(workbook, file);
    expect(again.changes).toEqual([]);
    expect(toFile(again)).toEqual(toFile(settled));
  });
});
