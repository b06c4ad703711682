import type { Skill } from "../../records/records";

/**
 * The published age of a skill, never without the label of what it is: a window from the 1st to the 99th percentile and an
 * age by which 75% or more do something are two kinds of number. Null where no closing age or no source is recorded.
 */
export function publishedAge(skill: Skill): string | null {
  const { label, id, basis, closesMonths } = skill;
  if (closesMonths === null || basis.trim() === "") return null;
  return `"${label || id}": ${kindOf(skill, closesMonths)}. Source: ${basis}. Published beside the program's figure, never in place of it: the children of the source are others.`;
}

function kindOf({ opensMonths, expectedShare }: Skill, closes: number): string {
  const window = opensMonths === null ? `by ${closes} months` : `${opensMonths} to ${closes} months`;
  if (expectedShare === null) return `${window}, common practice or a source that gives no share of children`;
  if (expectedShare === WHO_SHARE && opensMonths !== null)
    return `${window}, from the 1st to the 99th percentile of its source`;
  if (expectedShare === CDC_SHARE)
    return `by ${closes} months, the age by which 75% or more of children would be expected to do it`;
  return `${window}, by whose close ${Number((100 * expectedShare).toFixed(1))} in 100 children of its source do it`;
}

/** WHO Multicentre Growth Reference Study Group, Acta Paediatr 2006;Suppl 450:86-95: windows from the 1st to the 99th percentile. */
const WHO_SHARE = 0.99;
/** Zubler et al., Pediatrics 2022;149(3):e2021052138. */
const CDC_SHARE = 0.75;
