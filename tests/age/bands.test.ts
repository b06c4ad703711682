import { bandIndex, bandLabel, USUAL_EDGES } from "../../src/age/bands";

test.each([
  [-0.1, "before 0 months"],
  [0, "0 to <3 months"],
  [2.999, "0 to <3 months"],
  [6, "6 to <9 months"],
  [35.99, "24 to <36 months"],
  [36, "36 months and over"],
  [50, "36 months and over"],
])("%d months stand in %s", (months, label) => {
  expect(bandLabel(bandIndex(months, USUAL_EDGES), USUAL_EDGES)).toBe(label);
});
