import { usualSettings } from "../../settings/settings";
import type { WorkbookIn } from "../../workbook/workbook";
import type { EnrolmentRow } from "../children/enrolment-row";
import { readChildren } from "../children/read-children";
import type { Decision, SkillDecision } from "../corrections/decisions";
import { DecisionsInForce } from "../corrections/in-force";
import { FindingCollector } from "../findings/collector";
import type { Block } from "../headings/block";
import { childBlocks, findTables, findWide } from "../headings/find-tables";
import type { Reading } from "../rows/reading";
import { readSkills } from "../skills/read-skills";

/** The tables of a workbook as far as an understanding asks about them. */
export interface TablesTaken {
  readonly children: readonly Block[];
  readonly rows: readonly EnrolmentRow[];
  /** Long tables and grids of checks. */
  readonly checks: readonly Block[];
  readonly referrals: readonly Block[];
  readonly skills: readonly string[];
  /** The area that a text names; null where it names none. */
  readonly area: (text: string) => string | null;
  readonly isSkillTableThere: boolean;
}

/** Finds the tables as the decisions say, and reads the children; what is wrong with them is not listed here. */
export function tablesTaken(workbook: WorkbookIn, list: readonly Decision[]): TablesTaken {
  const findings = new FindingCollector();
  const decided = new DecisionsInForce(list);
  const reading: Reading = { dateSystem: workbook.dateSystem, settings: usualSettings, findings, decided };
  const found = findTables(workbook, findings, decided);
  const skillBlocks = found.blocks("Skills");
  const headings = found.regions.flatMap(({ settled }) => [...(settled?.skills.values() ?? [])]);
  const made = skillBlocks.length > 0 ? [] : headings.map((skill): SkillDecision => ({ kind: "skill", skill }));
  const skills = readSkills(reading, skillBlocks, [...decided.skills, ...made]);
  const wide = findWide(findings, found, decided, skills.lookup);
  const children = childBlocks(findings, found, wide);
  return {
    children: children.map(({ block }) => block),
    rows: children.length > 0 ? readChildren(reading, children).rows : [],
    checks: [...found.blocks("Observations"), ...wide.blocks].map(({ block }) => block),
    referrals: found.blocks("Referrals").map(({ block }) => block),
    area: skills.area,
    skills: skills.skills.map(({ id }) => id),
    isSkillTableThere: skillBlocks.length > 0,
  };
}
