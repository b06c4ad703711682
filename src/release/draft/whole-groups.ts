import { counted } from "../../words/numbers";
import type { Drafting } from "./drafting";

/**
 * Lists a share of 0% or 100% of a group, which says the same of every child in it. Groups under the threshold are
 * hidden anyway, and are not listed.
 */
export function flagShare(
  drafting: Drafting,
  place: string,
  share: { readonly met: number; readonly of: number },
): void {
  const { builder, flags, context } = drafting;
  const [met, of] = [builder.at(share.met), builder.at(share.of)];
  if (context.settings.wholeGroups !== "flag" || of.secret !== null || !of.count) return;
  if (met.count === 0) flags.push(`${place}: none of ${counted(of.count)}, which says the same of every child there.`);
  else if (met.count === of.count)
    flags.push(`${place}: all ${counted(of.count)}, which says the same of every child there.`);
}
