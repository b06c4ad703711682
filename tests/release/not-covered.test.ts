import { notCoveredWithin } from "../../src/release/ties/not-covered";

test("tables of children now and of children ever in the program are said to be tested in full only where skills are few", () => {
  for (const now of ["met-by-band", "trend"])
    for (const ever of ["reached-by-age", "age-when-met"])
      expect(notCoveredWithin([now, ever])).toEqual([
        expect.stringMatching(/^Tables of children now .* any one day\.$/),
      ]);
});

test("one kind alone, and tables about services beside it, are tied", () => {
  expect(notCoveredWithin(["met-by-band", "trend", "referrals", "ratings"])).toEqual([]);
  expect(notCoveredWithin(["reached-by-age", "age-when-met", "referral-steps"])).toEqual([]);
});
