import type { Settings } from "../settings/settings";
import type { WorkbookIn } from "../workbook/workbook";
import { type Counted, onlyByChoice, withZeros } from "./headings/count-blocks";
import { FindingCollector } from "./findings/collector";
import { DecisionsInForce } from "./corrections/in-force";
import type { Decision, SkillDecision } from "./corrections/decisions";
import { enrolmentsOf, listOutside, Stays } from "./children/enrolments";
import { childBlocks, findTables, findWide, type Found } from "./headings/find-tables";
import { judgeObservations } from "./observations/judge-observations";
import type { Region } from "./headings/region";
import { ObserverList } from "./observations/read-observations";
import { type ChildTable, readChildren } from "./children/read-children";
import { withSites } from "./children/site-from-file";
import { readObservations } from "./observations/read-observations";
import { readRatings } from "./services/read-ratings";
import { readReferrals } from "./services/read-referrals";
import { readSigns } from "./services/read-signs";
import { readSkills, skillsGiven, type SkillTable } from "./skills/read-skills";
import { readWide } from "./observations/read-wide";
import type { Reading } from "./rows/reading";
import { NO_DAY, type Observations, type Records, type Skill, type TableUse } from "./records";
import { ResultWords } from "./cells/result-words";
import { listHeadings } from "./understanding/list-headings";
import { countWords, type ProvenWords, provenWords } from "./understanding/result-words-met";
import { Staged } from "./observations/staged";
import { TABLE_NAMES, type TableName } from "./tables/spec";
import { RecordsUnusable } from "./unusable";

export { RecordsUnusable } from "./unusable";

/**
 * Reads a program's workbook: everything that can be used as typed columns, and a finding for everything else.
 *
 * @param skills - the skills of another workbook, in place of its own
 * @throws {RecordsUnusable} when Children, Observations or Skills is missing, or none of its rows can be used
 */
export function readRecords(
  workbook: WorkbookIn,
  settings: Settings,
  decisions: readonly Decision[] = [],
  skills: readonly Skill[] | null = null,
): Records {
  const run = new Run(workbook, settings, decisions);
  return run.read(skills);
}

/** What is switched off where an optional table is not there. */
const WITHOUT: Partial<Record<TableName, string>> = {
  Referrals: "referrals by site and area, where they clustered, and the way from referral to plan are not made",
  Signs: "caseloads and child pages say nothing of warning signs",
  Ratings: "outcome levels are not made",
};

/** One reading of one workbook, step by step: skills, children, observations, then the tables that need all three. */
class Run {
  private readonly findings = new FindingCollector();
  private readonly decisions: DecisionsInForce;
  private readonly reading: Reading;
  private readonly found: Found;
  private readonly counted: Counted[] = [];
  private readonly workbook: WorkbookIn;
  private wideRegions: ReadonlySet<Region> = new Set();

  constructor(workbook: WorkbookIn, settings: Settings, decisions: readonly Decision[]) {
    this.workbook = workbook;
    this.decisions = new DecisionsInForce(decisions);
    this.found = findTables(workbook, this.findings, this.decisions);
    this.reading = { dateSystem: workbook.dateSystem, settings, findings: this.findings, decided: this.decisions };
  }

  read(others: readonly Skill[] | null): Records {
    const skillBlocks = this.count(this.found.blocks("Skills"));
    this.need("Children", this.found.isThere("Children"));
    const made = this.skillsMade(skillBlocks.length > 0);
    if (skillBlocks.length + made.length === 0) this.need("Observations", this.found.isThere("Observations"));
    this.need("Skills", skillBlocks.length + made.length > 0);
    const own = readSkills(this.reading, skillBlocks, made);
    if (own.differ) this.refuseSkills(own.differ);
    const skills = others === null ? own : skillsGiven(this.reading, others);
    const wide = findWide(this.findings, this.found, this.decisions, skills.lookup);
    this.wideRegions = new Set(wide.inChildren.keys());
    const children = this.count(withSites(this.findings, childBlocks(this.findings, this.found, wide)));
    const table = readChildren(this.reading, children);
    this.needRows("Children", children);
    if (skillBlocks.length > 0) this.needRows("Skills", skillBlocks);
    const long = this.count(this.found.blocks("Observations"));
    this.need("Observations", long.length + wide.blocks.length > 0);
    const proven = provenWords(this.workbook, countWords([...long, ...wide.blocks].map(({ block }) => block)));
    const grids = proven.has("0") ? wide.blocks.map(withZeros) : wide.blocks;
    return this.assemble(skills, table, children, long, this.count(grids), proven);
  }

  private assemble(
    skills: SkillTable,
    table: ChildTable,
    children: readonly Counted[],
    long: readonly Counted[],
    wide: readonly Counted[],
    proven: ProvenWords,
  ): Records {
    const { staged, observations } = this.observe(skills, table, long, wide, proven);
    const childrenByChoice = children.every(({ tally }) => onlyByChoice(tally.use().leftOut));
    this.needRows("Observations", [...long, ...wide], childrenByChoice ? ["child-left-out"] : []);
    const enrolments = enrolmentsOf(this.reading, table, observations);
    const stays = new Stays(enrolments, table.children.ids.length);
    const outsideEnrolmentUsed = listOutside(this.reading, staged, stays);
    const context = { reading: this.reading, child: table.lookup, children: table.children, stays, area: skills.area };
    const referrals = this.optional("Referrals", (blocks) => readReferrals(context, blocks));
    const signs = this.optional("Signs", (blocks) => readSigns(context, blocks));
    const ratings = this.optional("Ratings", (blocks) => readRatings(context, blocks));
    this.listFiles();
    listHeadings(
      this.findings,
      this.counted.map(({ block }) => block),
    );
    return {
      children: table.children,
      enrolments,
      observations,
      skills: skills.skills,
      referrals,
      signs,
      ratings,
      decisions: this.decisions.report(this.findings),
      input: this.input(),
      findings: this.findings.sorted(),
      counts: {
        gestationNotRecorded: table.gestationNotRecorded,
        enteredBlankUsed: this.enteredBlank(observations),
        outsideEnrolmentUsed,
      },
    };
  }

  private observe(
    skills: SkillTable,
    table: ChildTable,
    long: readonly Counted[],
    wide: readonly Counted[],
    proven: ProvenWords,
  ): { staged: Staged; observations: Observations } {
    const staged = new Staged();
    const words = new ResultWords((key) => {
      const settled = this.decisions.word(key);
      return settled === undefined ? proven.get(key)?.means : settled;
    });
    const lookups = { child: table.lookup, skill: skills.lookup, observers: new ObserverList(), words };
    for (const { block, tally } of long) readObservations(this.reading, block, tally, lookups, staged);
    for (const { block, tally } of wide) readWide(this.reading, block, tally, lookups, staged);
    const observations = judgeObservations(this.reading, staged, table.children, lookups.observers.names);
    return { staged, observations };
  }

  /** The skills that a person named; where there is no table of skills, every heading that was said to be one too. */
  private skillsMade(isTableThere: boolean): readonly SkillDecision[] {
    const named = this.decisions.skills;
    named.forEach((each) => this.decisions.see(each));
    if (isTableThere) return named;
    const headings = this.found.regions.flatMap(({ settled }) => [...(settled?.skills.values() ?? [])]);
    return [...named, ...headings.map((skill): SkillDecision => ({ kind: "skill", skill }))];
  }

  private refuseSkills([first, second]: readonly [string, string]): never {
    const why = `Skills: ${first} and ${second} say different things of one skill. Make the two rows the same, or give one of the skills an id of its own.`;
    throw new RecordsUnusable("Skills", why, this.findings.sorted(), this.input());
  }

  private optional<T>(table: TableName, read: (blocks: readonly Counted[]) => T): T | null {
    const blocks = this.count(this.found.blocks(table));
    if (blocks.length > 0) return read(blocks);
    if (this.found.unfit(table, this.wideRegions) === null) {
      this.findings.workbook("table-missing", table, {
        expected: `a table ${table}, or its headings in one row`,
        advice: `The workbook has no table ${table}: ${WITHOUT[table] ?? "nothing is made from it"}. Add it if you want this; nothing else is needed.`,
      });
    }
    return null;
  }

  /** What one of several files lacks and others have, where something in it looks like it; and files without any table. */
  private listFiles(): void {
    const blocks = this.counted.map(({ block }) => block);
    for (const file of new Set(this.workbook.sheets.flatMap((sheet) => sheet.file ?? []))) {
      const own = blocks.filter((block) => block.file === file);
      for (const table of TABLE_NAMES) {
        const isElsewhere = blocks.some((block) => block.table === table);
        if (!isElsewhere || own.some((block) => block.table === table)) continue;
        this.found.unfit(table, this.wideRegions, file);
      }
      if (own.length === 0) this.findings.file("file-not-used", file);
    }
  }

  private enteredBlank({ entered }: Observations): number {
    return this.reading.settings.enteredBy === null ? 0 : entered.reduce((n, day) => n + (day === NO_DAY ? 1 : 0), 0);
  }

  private count(blocks: readonly Counted[]): readonly Counted[] {
    this.counted.push(...blocks);
    return blocks;
  }

  private input(): TableUse[] {
    return TABLE_NAMES.flatMap((name) =>
      this.counted.filter(({ block }) => block.table === name).map(({ tally }) => tally.use()),
    );
  }

  private need(table: TableName, isThere: boolean): void {
    if (isThere) return;
    const why =
      this.found.unfit(table) ??
      `${table}: no table of this name and no such headings were found. Add the table, or name it ${table}.`;
    throw new RecordsUnusable(table, why, this.findings.sorted(), this.input());
  }

  private needRows(table: TableName, blocks: readonly Counted[], also: readonly string[] = []): void {
    const uses = blocks.map(({ tally }) => tally.use());
    const usable = uses.some((use) => use.used > 0 || use.rows === 0 || onlyByChoice(use.leftOut, also));
    if (usable) return;
    const reasons = uses.flatMap(({ leftOut }) => Object.entries(leftOut).map(([reason, n]) => `${reason}: ${n}`));
    const why = `${table}: none of its rows can be used (${reasons.join("; ")}). Repair the cells that the findings name.`;
    throw new RecordsUnusable(table, why, this.findings.sorted(), this.input());
  }
}
