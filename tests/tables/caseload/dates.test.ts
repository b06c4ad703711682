import { dayFromIso, isoOf } from "../../../src/age/day";
import { transitionDue, transitionOf } from "../../../src/cohort/transition";
import {
  DAYS_AHEAD,
  nextVisit,
  ROUTINE_VISIT_MONTHS,
  SCREENING_MONTHS,
  visitBefore,
  visitDue,
} from "../../../src/cohort/visits";
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

test("a caseload says whether the conference is still due or was due", () => {
  const bornOn = (birth: string) => only({ children: [["A", birth, null, "T1", "2025-01-01", null]] });
  // Third birthday December 29, 2026 is 90 days after the as-of date; a day earlier, the date has passed.
  expect(bornOn("2023-12-29")).toMatchObject({ transitionDue: "2026-09-30", priority: 4 });
  expect(bornOn("2023-12-29").reason).toContain("is due by September 30, 2026");
  expect(bornOn("2023-12-28").reason).toContain("was due by September 29, 2026");
  expect(bornOn("2023-12-29").nextStep).toContain("transition conference");
});

/** Screening at 9, 18 and 30 months: Lipkin and Macias, Pediatrics 2020;145(1):e20193449 (abstract). The visit ages: from memory of the same policy's schedule. */
test("ages of routine visits and of general screening", () => {
  expect(ROUTINE_VISIT_MONTHS).toEqual([2, 4, 6, 9, 12, 15, 18, 24, 30, 36]);
  expect(SCREENING_MONTHS).toEqual([9, 18, 30]);
});

test("a visit is due from the day the child comes to its age back to 30 days before, counted from birth", () => {
  const birth = day("2025-12-31");
  const ninthMonth = day("2026-09-30");
  expect(visitDue(birth, ninthMonth)).toEqual({ months: 9, day: ninthMonth, screening: true });
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
  expect(early.reason).toContain("Routine visit of 9 months around October 10, 2026, with general screening.");
});
