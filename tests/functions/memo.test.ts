import { setDateSystem } from "../../functions/date-system";
import { remembered } from "../../functions/memo";

/** Asks, and counts how often the answer had to be worked out. */
function counter(name: string) {
  const count = { worked: 0 };
  const ask = (args: readonly unknown[], rows = 1) =>
    remembered(name, args, () => {
      count.worked += 1;
      return Array.from({ length: rows }, () => [count.worked]);
    });
  return { ask, count };
}

test("the same question is worked out once, whatever array it comes in", () => {
  const { ask, count } = counter("SAME");
  const first = ask([[[1], ["a"], [null]], "2026-09-30"]);
  expect(ask([[[1], ["a"], [null]], "2026-09-30"])).toBe(first);
  expect(count.worked).toBe(1);
});

test("an edit, another function and another date system are other questions", () => {
  const { ask, count } = counter("EDIT");
  const other = counter("OTHER");
  ask([[[1], ["a"]]]);
  ask([[[1], ["b"]]]);
  ask([[["1"], ["a"]]]);
  ask([[[1]], ["a"]]);
  expect(count.worked).toBe(4);
  other.ask([[[1], ["a"]]]);
  expect(other.count.worked).toBe(1);
  setDateSystem(1904);
  ask([[[1], ["a"]]]);
  setDateSystem(1900);
  expect(count.worked).toBe(5);
});

test("a sheet with a formula for each of many skills costs nothing when it recalculates", () => {
  const { ask, count } = counter("SKILLS");
  for (let pass = 0; pass < 3; pass += 1) for (let skill = 0; skill < 500; skill += 1) ask([skill], 9);
  expect(count.worked).toBe(500);
});

test("answers of more than a million cells are not kept for ever: the one not asked for longest goes first", () => {
  const { ask, count } = counter("LARGE");
  for (const each of ["a", "b", "c"]) ask([each], 330_000);
  ask(["a"], 330_000);
  expect(count.worked).toBe(3);
  ask(["d"], 330_000);
  ask(["a"], 330_000);
  expect(count.worked).toBe(4);
  ask(["b"], 330_000);
  expect(count.worked).toBe(5);
});

test("what cannot be answered is not remembered", () => {
  const fails = () => {
    throw new RangeError("no");
  };
  expect(() => remembered("FAILS", [1], fails)).toThrow(RangeError);
  expect(remembered("FAILS", [1], () => [[7]])).toEqual([[7]]);
});

const large = (edit: (cells: unknown[][]) => void = () => undefined) => {
  const cells: unknown[][] = Array.from({ length: 50_000 }, (_, row) => [
    `child ${row % 900}`,
    row % 30,
    46_000,
    "met",
  ]);
  edit(cells);
  return cells;
};

test("an edit of one cell of a large range is another question, wherever the cell stands", () => {
  const { ask, count } = counter("LARGE RANGE");
  ask([large()]);
  ask([large()]);
  expect(count.worked).toBe(1);
  for (const row of [0, 17, 24_999, 49_998]) ask([large((cells) => (cells[row]![3] = "not met"))]);
  ask([large((cells) => (cells[77]![1] = String(cells[77]![1])))]);
  ask([large((cells) => (cells[77]![3] = null))]);
  ask([large((cells) => (cells[77]![3] = ""))]);
  ask([large((cells) => cells.pop())]);
  expect(count.worked).toBe(9);
  ask([large()]);
  expect(count.worked).toBe(9);
});

test("a caller who changes the cells of a range that was asked about has another question", () => {
  const { ask, count } = counter("IN PLACE");
  const cells = large();
  ask([cells]);
  cells[40_000]![3] = "not met";
  ask([cells]);
  ask([large()]);
  expect(count.worked).toBe(2);
});

test("ranges that stand in another order are another question", () => {
  const { ask, count } = counter("ORDER");
  const other = large((cells) => (cells[1]![0] = "another"));
  ask([large(), other]);
  ask([other, large()]);
  ask([large(), other, 1]);
  expect(count.worked).toBe(3);
});
