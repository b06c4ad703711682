import { plural } from "../../src/words/numbers";
import type { BehindAnswer, FirmAnswer } from "../worker/report/made";

/** `Made of 1,204 checks of 96 children. This list names cells of single children: it is for the program alone.` */
export function behindInWords({ rows, children }: Pick<BehindAnswer, "rows" | "children">): string {
  return `Made of ${plural(rows, "check", "checks")} of ${plural(children, "child", "children")}. The cells below are of single children: keep them in the program.`;
}

/** What the dots are. */
export function dotsInWords({ per }: Pick<FirmAnswer["picture"], "per">): string {
  const each = per === 1 ? "Each dot is one choice of definitions" : `Each dot is up to ${per} choices of definitions`;
  return `${each}. The filled one is the report’s own.`;
}
