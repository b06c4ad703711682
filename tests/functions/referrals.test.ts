import fc from "fast-check";
import { observedExpected } from "../../src/statistics/poisson";
import { child, program } from "../oracle/programs";
import { oracleReferrals } from "../oracle/referrals";
import { referralPrograms, type ReferralProgram, referralSheet } from "../tables/referrals-book";
import { answerOf, rowsOf } from "./call";
import { argumentsOf, asRows, type Range } from "./ranges";

const KEYS = [
  ...["dimension", "value", "children", "childMonths", "referrals", "childrenReferred", "per100ChildMonths"],
  ...["expected", "ratio", "lower", "upper", "p", "holm", "bh"],
  ...["funnel95Lower", "funnel95Upper", "funnel998Lower", "funnel998Upper"],
];

/** Areas of Skills are not known to the function; those that nobody is referred for have no row. */
function callArguments({ input, referrals }: ReferralProgram): unknown[] {
  const { tables, settings } = argumentsOf(input);
  const own = settings.filter(([name]) => name !== "from");
  return [tables[0], referralSheet(referrals), input.settings.from, input.settings.asOf, own];
}

test("random programs agree with a count of one day at a time", () => {
  fc.assert(
    fc.property(referralPrograms(), (each) => {
      const without = { ...each, input: { ...each.input, observations: [], skills: [] } };
      const answer = answerOf("REFERRALS", ...callArguments(without));
      fc.pre("result" in answer);
      const ours = asRows("result" in answer ? answer.result : [], KEYS);
      const theirs = oracleReferrals(without.input, each.referrals);
      expect(ours).toHaveLength(theirs.length);
      for (const row of theirs) {
        const own = ours.find(({ dimension, value }) => dimension === row.dimension && value === row.value);
        expect(own?.referrals).toBe(row.referrals);
        expect(own?.childMonths).toBeCloseTo(Number(row.childMonths), 8);
        if (row.expected === null) {
          expect([own?.expected, own?.ratio, own?.p]).toEqual([null, null, null]);
        } else {
          const { ratio, p } = observedExpected(Number(row.referrals), Number(row.expected), 0.95);
          expect(own?.expected).toBeCloseTo(Number(row.expected), 8);
          expect(own?.ratio ?? null).toEqual(ratio === null ? null : expect.closeTo(ratio, 6));
          expect(own?.p ?? null).toEqual(p === null ? null : expect.closeTo(p, 6));
        }
      }
    }),
    { numRuns: 40 },
  );
});

describe("errors", () => {
  const { tables } = argumentsOf(program([child("A", "2024-01-01")], []));
  const children = tables[0] as Range;
  const row = (area: unknown, referred = "2024-05-01", evaluated: unknown = null): unknown[][] => [
    ["Child", "Referred", "Area", "Evaluated"],
    ["A", referred, area, evaluated],
  ];
  const call = (referrals: unknown, from: unknown = "2024-04-01", to: unknown = "2024-06-30", given = children) =>
    answerOf("REFERRALS", given, referrals, from, to);

  test.each([
    ["an area that is not known", () => call(row("handwriting")), "Referrals row 2, column C"],
    ["no date", () => call(row("speech", "soon")), "Referrals row 2, column B"],
    ["evaluated before referred", () => call(row("speech", "2024-05-01", "2024-04-01")), "Referrals row 2, column D"],
    [
      "an unknown child",
      () => call([...row("speech"), ["B", "2024-05-01", "speech", null]]),
      "Referrals row 3, column A",
    ],
    ["a period backwards", () => call(row("speech"), "2024-07-01"), "from comes after to"],
    ["no first day", () => call(row("speech"), null), "from"],
    [
      "no date of enrolment at all",
      () => call(row("speech"), undefined, undefined, [["Child", "Birth date"] as never, ["A", "2024-01-01"]]),
      "nobody is in the program",
    ],
  ])("%s", (_, answer, words) => {
    expect(answer()).toMatchObject({ error: "#VALUE!", message: expect.stringContaining(words) });
  });

  test("the header row, and a site that expects something", () => {
    const [header, first] = rowsOf("REFERRALS", children, row("speech"), "2024-04-01", "2024-06-30");
    expect(header?.slice(0, 3)).toEqual(["By", "Value", "Children in the program"]);
    expect(first?.slice(0, 5)).toEqual(["site", "North", 1, 91 / 30.4375, 1]);
  });
});
