import { fuzz } from "../hosts/file/read/fuzzing";

const cases = Number(process.env.FUZZ_CASES ?? 20_000);
const seed = Number(process.env.FUZZ_SEED ?? 1);

/** By hand: `FUZZ_CASES=100000 FUZZ_SEED=2 npm run fuzz`. The same seed gives the same files. */
test(
  `${cases} damaged workbooks`,
  async () => {
    const outcomes = await fuzz(cases, seed);
    process.stdout.write(`${JSON.stringify({ seed, ...outcomes })}\n`);
    expect(outcomes.cases).toBe(cases);
  },
  24 * 3_600_000,
);
