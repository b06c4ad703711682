import type { CellStyle } from "../../workbook/sheets";

interface Line {
  readonly text: string;
  readonly style: CellStyle;
}

const title = (text: string): Line => ({ text, style: "title" });
const section = (text: string): Line => ({ text, style: "section" });
const line = (text: string): Line => ({ text, style: "wrapped" });

/** One page: how to keep records so that they can be counted. */
export const GUIDE: readonly Line[] = [
  title("How to keep records so that they can be counted"),
  line(
    "Each sheet has one example row. Type over it. Leave the headings as they are; add columns of your own to the right.",
  ),
  section("Children: one row per child and enrollment"),
  line(
    "Child is a code that never changes and is not a name. Birth date and Enrolled are dates. Left stays blank until the child leaves the program.",
  ),
  line(
    "Gestation is weeks and days at birth, such as 34+2. It decides how an age is corrected: leave it blank only where nobody knows it.",
  ),
  line("A child who comes back gets a second row with the same code."),
  section("Observations: one row each time a skill is checked"),
  line('Write down what was checked and not yet met, too. Without it nobody knows "not yet" from "not checked".'),
  line("Result is met, emerging, not met or lost. Lost is a skill that was there and is there no longer."),
  line("Date is the day of the visit. Entered is the day it was typed in: it shows how complete the last weeks are."),
  section("Skills: one row per skill"),
  line(
    "Opens and Closes are ages in months, from a source that Basis names. Leave them blank where you have none: never make one up.",
  ),
  section("Referrals, Signs, Ratings: only if you use them"),
  line("A step that has not been taken stays blank. Several areas of one referral are separated by a semicolon."),
  section("Everywhere"),
  line(
    "One fact per cell. Type dates as 2026-03-31. Write a site and a person the same way each time: choose from the lists.",
  ),
  line("Never insert totals, notes or blank headings inside a table. Put them on a sheet of their own."),
  line("Correct a mistake where it is, not by a second row."),
  line(
    "Keep names and addresses out of this workbook. These records describe a program, not a diagnosis; for any child, talk with the child's clinician.",
  ),
];
