import type { Report } from "../report";
import { clusters } from "./clusters";
import { expectedByNow } from "./expected-by-now";
import type { ReportFinding } from "./finding";
import { outcomeLevels } from "./outcome-levels";
import { reachedByAge } from "./reached-by-age";
import { referralToPlan } from "./referral-to-plan";

/**
 * What a manager asks first, in the order of the report's first page. The pane shows the same.
 *
 * @param skills - ids of up to three skills for the ages; chosen by rule when left out
 */
export function fiveFindings(report: Report, skills: readonly string[] = []): readonly ReportFinding[] {
  return [
    expectedByNow(report),
    reachedByAge(report, skills),
    referralToPlan(report),
    clusters(report),
    outcomeLevels(report),
  ];
}
