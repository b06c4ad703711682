import { changed, changesIn } from "./changes.mjs";

const made = (text: string) => changesIn(text).map((change) => [change.kind, changed(text, change)]);

test.each([
  ["a < b;", ["comparison", "a <= b;"]],
  ["a >= b;", ["comparison", "a > b;"]],
  ["x = a === b;", ["comparison", "x = a !== b;"]],
  ["x = !a;", ["comparison", "x = a;"]],
  ["x = a - b;", ["sign", "x = a + b;"]],
  ["x = -b;", ["sign", "x = b;"]],
  ["x = rows[7];", ["bound", "x = rows[8];"]],
  ["x = Math.min(a, b);", ["bound", "x = Math.max(a, b);"]],
  ["x = rows.sort(byAge).map(f);", ["order", "x = rows.map(f);"]],
  ["x = rows.findLast(f);", ["order", "x = rows.find(f);"]],
  ["x = rows.filter(f);", ["step", "x = rows;"]],
  ["count(a); save(b);", ["step", "count(a); ;"]],
  ["if (a) return 1;", ["step", ";"]],
  ["x = a ? b : c;", ["comparison", "x = c;"]],
])("%s is changed to %j", (text, expected) => {
  expect(made(text)).toContainEqual(expected);
});

test("types, imports, texts and comments are left alone", () => {
  const text = 'import { a } from "./a-1"; interface B { c: 1 | 2 } type D = 3; // 4 < 5\nconst e: 6 = "7 < 8";';
  expect(made(text)).toEqual([]);
});

test("each change is of one place, and says its line", () => {
  const text = "const a = 1;\nconst b = a < 2;\n";
  expect(changesIn(text).map(({ line, was, now }) => [line, was, now])).toEqual([
    [1, "1", "2"],
    [2, "<", "<="],
    [2, "2", "3"],
  ]);
});
