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
