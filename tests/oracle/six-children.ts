import { child, look, program } from "./programs";

/**
 * One child for each box, on June 30, 2024; all enrolled on February 15, 2024.
 *
 * C: 1 April to 30 June is 29 + 31 + 30 = 90 days, so still current. D: one day more, so out of date.
 */
export const SIX_CHILDREN = program(
  [
    child("A", "2023-09-30", { enrolled: "2024-02-15" }),
    child("B", "2023-12-31", { enrolled: "2024-02-15" }),
    child("C", "2023-10-15", { enrolled: "2024-02-15" }),
    child("D", "2023-10-15", { enrolled: "2024-02-15" }),
    child("E", "2023-11-01", { enrolled: "2024-02-15" }),
    child("F", "2023-11-02", { enrolled: "2024-02-15" }),
  ],
  [
    look("A", "2024-01-10", "not met"),
    look("A", "2024-04-10", "met"),
    look("B", "2024-06-01", "met"),
    look("C", "2024-04-01", "not met"),
    look("D", "2024-03-31", "emerging"),
    look("E", "2024-03-01", "met"),
    look("E", "2024-05-01", "lost"),
  ],
);

/**
 * Counted on a calendar. A: 30 September to 30 December is 91 days, to 10 January 102; to 30 March (a leap year) 182, to
 * 10 April 193. B: 31 December to 31 May is 31 + 29 + 31 + 30 + 31 = 152. C: 16 + 30 + 31 + 31 + 29 + 31 + 1 = 169.
 * E: 30 + 31 + 31 + 29 = 121. From 15 February: 31 March 45, 1 April 46. A was checked without it before enrolling only, B and E never.
 */
export const MEASURED = [
  { child: "A", age: { after: 102, by: 193 }, enrolment: null },
  { child: "B", age: { after: 0, by: 153 }, enrolment: null },
  { child: "C", age: { after: 169, by: null }, enrolment: { after: 46, by: null } },
  { child: "D", age: { after: 168, by: null }, enrolment: { after: 45, by: null } },
  { child: "E", age: { after: 0, by: 121 }, enrolment: null },
];
