export type GroupLabel = string | number;

export interface GroupCounts {
  readonly group: GroupLabel;
  readonly n: number;
  /** children who met the skill, and how many would have at the ages of all groups together; null in the interval form */
  readonly observed: number | null;
  readonly expected: number | null;
}

/** A comparison of groups; null, with a reason, where there is nothing to compare. */
export interface Comparison {
  readonly method: "log-rank" | "log-rank (score form for intervals)";
  readonly chiSquared: number | null;
  readonly degreesOfFreedom: number | null;
  readonly p: number | null;
  readonly reason: string | null;
  readonly groups: readonly GroupCounts[];
}

export function notCompared(method: Comparison["method"], reason: string): Comparison {
  return { method, chiSquared: null, degreesOfFreedom: null, p: null, reason, groups: [] };
}

/** The groups in order of first appearance, and the place of each row's group among them. */
export function groupsOf(group: readonly GroupLabel[], rows: number): { labels: GroupLabel[]; codes: Int32Array } {
  if (group.length !== rows) throw new RangeError("the ages and the groups differ in length");
  const labels = [...new Set(group)];
  const place = new Map(labels.map((label, index) => [label, index]));
  return { labels, codes: Int32Array.from(group, (label) => place.get(label)!) };
}
