import type { Day } from "../age/day";
import { type Chance, chanceOf } from "./chance";
import type { SampleReferral } from "./referrals";
import type { SampleArea } from "./skills";

/** What became of a referral, as far as the last day of the records shows. */
export interface ReferralSteps {
  readonly reason: string;
  readonly from: string;
  readonly to: string;
  readonly received: Day | null;
  readonly evaluated: Day | null;
  readonly eligible: "yes" | "no" | null;
  readonly plan: Day | null;
  readonly lateReason: "family" | "program" | null;
  readonly closed: Day | null;
}

const SOURCES = ["home visitor", "clinic", "family", "child care"];
const REASONS: Readonly<Record<SampleArea, string>> = {
  "gross motor": "moves little for the age",
  "fine motor": "hands are used little",
  "social-emotional": "seldom seeks others",
  cognitive: "plays the same way for long",
  speech: "few sounds or words",
  sensory: "minds sounds or touch",
};
/** Days from receipt to the plan that the rule allows. Source: 34 CFR 303.310. */
const DAYS_ALLOWED = 45;

export function drawSteps(referrals: readonly SampleReferral[], seed: number, last: Day): ReferralSteps[] {
  const chance = chanceOf(seed, 7);
  return referrals.map((referral) => drawOne(chance, referral, last));
}

function drawOne(chance: Chance, referral: SampleReferral, last: Day): ReferralSteps {
  const known = (day: Day | null): Day | null => (day !== null && day <= last ? day : null);
  const received = referral.referred + chance.weighted([0, 1, 2, 4], [40, 30, 20, 10]);
  const evaluated = chance.yes(0.9) ? received + chance.whole(7, 38) : null;
  const eligible = evaluated === null ? null : chance.weighted(["yes", "no"] as const, [72, 28]);
  const plan = eligible === "yes" ? (evaluated as Day) + chance.weighted([3, 9, 18, 34], [35, 35, 20, 10]) : null;
  const late = plan !== null && plan - received > DAYS_ALLOWED;
  const end =
    evaluated === null ? received + chance.whole(40, 120) : eligible === "no" ? evaluated + chance.whole(0, 7) : null;
  return {
    reason: REASONS[referral.areas[0] as SampleArea],
    from: chance.pick(SOURCES),
    to: chance.pick(["evaluation team", "clinic"]),
    received: chance.yes(0.2) ? null : known(received),
    evaluated: known(evaluated),
    eligible: known(evaluated) === null ? null : eligible,
    plan: known(plan),
    lateReason: late && known(plan) !== null ? chance.weighted(["family", "program", null] as const, [5, 3, 2]) : null,
    closed: known(end),
  };
}
