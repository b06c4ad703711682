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
  if (context.settings.wholeGroups !== "flag" || of.secret !== null || of.count === 0) return;
  if (met.count === 0) flags.push(`${place}: 0%, which says the same of every child there.`);
  else if (met.count === of.count) flags.push(`${place}: 100%, which says the same of every child there.`);
}
