import type { Observations, Records, Skill } from "../../records/records";

/** The records of some skills, and of those that replace them: all that figures of these skills depend on. */
export function restrictedTo(isWanted: (skill: Skill) => boolean, records: Records): Records {
  const kept = withFollowers(records.skills, records.skills.map(isWanted));
  const places = new Map(kept.map((old, now) => [old, now]));
  return {
    ...records,
    skills: kept.map((old) => {
      const skill = records.skills[old] as Skill;
      return { ...skill, follows: skill.follows === null ? null : (places.get(skill.follows) ?? null) };
    }),
    observations: ofSkills(records.observations, places),
  };
}

/** Indices, rising, of the skills that are wanted or follow one that is, directly or through others. */
function withFollowers(skills: readonly Skill[], wanted: readonly boolean[]): number[] {
  const reaches = (skill: number): boolean => {
    const seen = new Set<number>();
    for (let at: number | null = skill; at !== null && !seen.has(at); at = skills[at]?.follows ?? null) {
      if (wanted[at]) return true;
      seen.add(at);
    }
    return false;
  };
  return [...skills.keys()].filter(reaches);
}

function ofSkills(all: Observations, places: ReadonlyMap<number, number>): Observations {
  const rows = all.skill.reduce<number[]>((kept, skill, row) => {
    if (places.has(skill)) kept.push(row);
    return kept;
  }, []);
  const pick = (column: Int32Array) => Int32Array.from(rows, (row) => column[row] as number);
  const pickBytes = (column: Uint8Array) => Uint8Array.from(rows, (row) => column[row] as number);
  return {
    ...all,
    places: undefined,
    child: pick(all.child),
    skill: Uint16Array.from(rows, (row) => places.get(all.skill[row] as number) as number),
    day: pick(all.day),
    result: pickBytes(all.result),
    exact: pickBytes(all.exact),
    observer: pick(all.observer),
    entered: pick(all.entered),
  };
}
