import type { Day } from "../age/day";
import { NO_DAY } from "../records/records";
import type { Cohort } from "./cohort";
import { restoreFollowed } from "./follows";
import type { Looks } from "./looks";
import { SkillScan } from "./skill-scan";
import type { Attainment } from "./state";

/**
 * When each child met each skill, from the looks up to a day: one pass over the sorted looks.
 *
 * @param upTo - the last day that counts, one for all or one a child (NO_DAY: no look of that child counts)
 */
export function attain(cohort: Cohort, upTo: Day | Int32Array): Attainment {
  const { looks, skills, ids } = cohort;
  const attainment = blankAttainment(ids.length, skills.length);
  const scan = new SkillScan(attainment, cohort.disagreementIsMet);
  for (let child = 0; child < ids.length; child += 1) {
    scanChild(scan, looks, child, skills.length, typeof upTo === "number" ? upTo : (upTo[child] as number));
  }
  restoreFollowed(attainment, skills);
  return attainment;
}

function scanChild(scan: SkillScan, looks: Looks, child: number, skillCount: number, last: Day): void {
  const { skill, day, result, exact } = looks;
  const end = looks.offsets[child + 1] as number;
  const base = child * skillCount;
  for (let at = looks.offsets[child] as number; at < end && (day[at] as number) <= last; at += 1) {
    scan.look(base, skill[at] as number, day[at] as number, result[at] as number, exact[at] as number);
  }
}

function blankAttainment(childCount: number, skillCount: number): Attainment {
  const cells = childCount * skillCount;
  return {
    skillCount,
    metDay: new Int32Array(cells).fill(NO_DAY),
    withoutDay: new Int32Array(cells).fill(NO_DAY),
    lastLook: new Int32Array(cells).fill(NO_DAY),
    state: new Uint8Array(cells),
    exact: new Uint8Array(cells),
    disagreed: new Uint8Array(cells),
  };
}
