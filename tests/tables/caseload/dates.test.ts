import { dayFromIso, isoOf } from "../../../src/age/day";
import { transitionDue, transitionOf } from "../../../src/cohort/transition";
import {
  AUTISM_SCREENING_MONTHS,
  DAYS_AHEAD,
  nextVisit,
  ROUTINE_VISIT_MONTHS,
  SCREENING_MONTHS,
  visitBefore,
  visitDue,
} from "../../../src/cohort/visits";
import { AUTISM_SCREENING, GENERAL_SCREENING, ROUTINE_VISITS } from "../../published/aap-2020";
import { PART_C_TRANSITION } from "../../published/part-c-transition";
import { only } from "./program";

const day = (iso: string) => dayFromIso(iso) as number;

test.each(PART_C_TRANSITION)(
  "born $birth: third birthday $thirdBirthday, conference by $ninetyDaysBefore",
  ({ birth, thirdBirthday, ninetyDaysBefore }) => {
    const transition = transitionOf(day(birth));
    expect(isoOf(transition.thirdBirthday)).toBe(thirdBirthday);
    expect(isoOf(transition.conferenceBy)).toBe(ninetyDaysBefore);
  },
);

/** Months are added with the clamp to the month's last day, so such a child turns three on 28 February; 90 days before is 30 November. */
test("born on 29 February", () => {
  const transition = transitionOf(day("2020-02-29"));
  expect([isoOf(transition.thirdBirthday), isoOf(transition.conferenceBy)]).toEqual(["2023-02-28", "2022-11-30"]);
});

test("transition is due from nine months before the third birthday until the day before it", () => {
  const birth = day("2022-07-04");
  expect(transitionDue(birth, day("2024-10-03"))).toBeNull();
  expect(transitionDue(birth, day("2024-10-04"))).not.toBeNull();
  expect(transitionDue(birth, day("2025-07-03"))).not.toBeNull();
  expect(transitionDue(birth, day("2025-07-04"))).toBeNull();
});

test("a caseload says whether the conference is due, was due, or is due as soon as possible, and what is not known", () => {
  const bornOn = (birth: string, enrolled = "2026-08-01") =>
    only({
      children: [["A", birth, null, "T1", enrolled, null]],
      looks: [["A", "who8", "2026-09-29", "met"]],
    });
  // Third birthday 29 December 2026 is 90 days after the as-of date; a day earlier, the date has passed.
  expect(bornOn("2023-12-29")).toMatchObject({ transitionDue: "2026-09-30", priority: 5 });
  expect(bornOn("2023-12-29").reason).toMatch(/is due by .*30.*; the records do not show whether it was held/);
  expect(bornOn("2023-12-28").reason).toMatch(/was due by .*29/);
  expect(bornOn("2023-12-29").nextStep).toContain("transition conference");
  // Came the day after the last day for it.
  const late = bornOn("2023-12-28", "2026-09-30");
  expect(late.reason).toContain("is due as soon as possible: the child came after");
  expect(late.nextStep).toContain("with the family as soon as possible");
  expect(bornOn("2023-12-28", "2026-09-29").reason).toContain("was due by");
});

test("ages of routine visits and of screening are the published ones", () => {
  expect(ROUTINE_VISIT_MONTHS).toEqual(ROUTINE_VISITS);
  expect(SCREENING_MONTHS).toEqual(GENERAL_SCREENING);
  expect(AUTISM_SCREENING_MONTHS).toEqual(AUTISM_SCREENING);
});

test("a visit is due from the day the child comes to its age back to 30 days before, counted from birth", () => {
  const birth = day("2025-12-31");
  const ninthMonth = day("2026-09-30");
  expect(visitDue(birth, ninthMonth)).toEqual({ months: 9, day: ninthMonth, screening: true, autismScreening: false });
  expect(visitDue(birth, ninthMonth - DAYS_AHEAD)?.months).toBe(9);
  expect(visitDue(birth, ninthMonth - DAYS_AHEAD - 1)).toBeNull();
  expect(visitDue(birth, ninthMonth + 1)).toBeNull();
  expect(nextVisit(birth, ninthMonth + 1)?.months).toBe(12);
  expect(visitBefore(birth, ninthMonth)?.months).toBe(6);
  expect(nextVisit(birth, day("2029-01-01"))).toBeNull();
  expect(visitBefore(birth, birth)).toBeNull();
});

test("a preterm child's visit goes by the age since birth", () => {
  const early = only({ children: [["A", "2026-01-10", "26+0", "T1", "2026-03-01", null]] });
  expect(early).toMatchObject({ visitDue: "2026-10-10" });
  expect(early.reason).toMatch(/Routine visit of 9 months around .*10.* 2026, with general screening\./);
});
