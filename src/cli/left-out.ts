import type { TableUse } from "../records/records";
import { notUsedSentence } from "../records/understanding/not-used";
import { plural } from "../words/numbers";
import { ruleOf } from "../records/findings/rules";

/** The first lines of a summary: how much was not used, and what a person can settle. None where everything was used. */
export function leftOutLines(input: readonly TableUse[]): string[] {
  const sentence = notUsedSentence(input);
  const left = (rule: string) => input.reduce((sum, { leftOut }) => sum + (leftOut[ruleOf(rule).reason] ?? 0), 0);
  const [unknown, areas] = [left("result-unknown"), left("area-unknown")];
  return [
    ...(sentence === null ? [] : [sentence]),
    ...(unknown === 0
      ? []
      : [
          `${unknown} results are in words that nobody settled: "windowline understand" shows each word with its count.`,
        ]),
    ...(areas === 0
      ? []
      : [
          `${plural(areas, "referral is", "referrals are")} for an area in words that nobody settled: "windowline understand" shows each word with its count.`,
        ]),
  ];
}
