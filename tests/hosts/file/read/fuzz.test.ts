import { fuzz } from "./fuzzing";

/** The longer run is `npm run fuzz`. */
test("a damaged workbook is read or refused, never worse, and both paths agree", async () => {
  const outcomes = await fuzz(600, 20_240_229);
  expect(outcomes.cases).toBe(600);
  expect(outcomes.readBothWays).toBeGreaterThan(100);
  expect(outcomes.refusedBothWays).toBeGreaterThan(100);
  expect(outcomes.readByScannerAlone).toBe(0);
  expect(outcomes.slowestMs).toBeLessThan(5_000);
}, 60_000);
