/** Known without loading what drafts them; a test holds this against the list of the release itself. */
const RELEASABLE: ReadonlySet<string> = new Set([
  "met-by-band",
  "met-by-band-left",
  "reached-by-age",
  "age-when-met",
  "referrals",
  "referral-steps",
  "ratings",
  "trend",
]);

export function isReleasable(id: string): boolean {
  return RELEASABLE.has(id);
}
