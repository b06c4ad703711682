import type { TableUse } from "../records/records";
import { notUsedSentence } from "../records/understanding/not-used";
import { ruleOf } from "../records/findings/rules";

/** The first lines of a summary: how much was not used, and what a person can settle. None where everything was used. */
export function leftOutLines(input: readonly TableUse[]): string[] {
  const sentence = notUsedSentence(input);
  const unknown = input.reduce((sum, { leftOut }) => sum + (leftOut[ruleOf("result-unknown").reason] ?? 0), 0);
  return [
    ...(sentence === null ? [] : [sentence]),
    ...(unknown === 0
      ? []
      : [
          `${unknown} results are in words that nobody settled: "windowline understand" shows each word with its count.`,
        ]),
  ];
}
