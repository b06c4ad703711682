import type { DateOrder } from "../cells/date-codes";
import { headingKey, keyOf, wordKey } from "../cells/words";
import type { FindingCollector } from "../findings/collector";
import { columnMeant } from "../headings/headings";
import type { DecidedHeadings } from "../headings/table-match";
import type { Decided } from "../rows/reading";
import { specOf, TABLES } from "../tables";
import type { TableName } from "../tables/spec";
import { understandingInWords } from "./understanding-in-words";
import { type Decision, isRepair, type Repair, type SheetDecision, type SkillDecision } from "./decisions";
import { LEAVE_OUT, type ShortYearMeaning, type WordMeaning } from "./settled";

/** The key under which the order of dates in a skill column of a wide sheet is decided. */
export function wideKey(heading: string): string {
  return `skill:${headingKey(heading)}`;
}

/** The repair decisions of a run. Revoked ones are not there; each remembers whether anything needed it. */
export class DecisionsInForce implements Decided {
  readonly headings: DecidedHeadings;
  /** What sheets are, in the order of the decisions. */
  readonly sheets: readonly SheetDecision[];
  /** Skills that no table of skills holds. */
  readonly skills: readonly SkillDecision[];
  private readonly aliases = { child: new Map<string, Numbered<string>>(), skill: new Map<string, Numbered<string>>() };
  private readonly orders = new Map<string, Numbered<DateOrder>>();
  private readonly words = new Map<string, Numbered<WordMeaning | null>>();
  private shortYears: Numbered<ShortYearMeaning> | undefined;
  private readonly areas = new Map<string, Numbered<string | null>>();
  private readonly names = new Map<string, Numbered<string>>();
  private readonly headingDecisions: { table: TableName; key: string; number: number }[] = [];
  private readonly needed = new Set<number>();

  constructor(private readonly decisions: readonly Decision[]) {
    const headings = new Map<TableName, Map<string, string>>();
    decisions.forEach((each, number) => {
      if (!each.revoked) this.take(each, number, headings);
    });
    this.headings = headings;
    this.sheets = decisions.flatMap((each) => (each.kind === "sheet" && !each.revoked ? [each] : []));
    this.skills = decisions.flatMap((each) => (each.kind === "skill" && !each.revoked ? [each] : []));
  }

  child(key: string): string {
    return this.follow(this.aliases.child, key);
  }

  skill(key: string): string {
    return this.follow(this.aliases.skill, key);
  }

  order(table: TableName, columnKey: string): DateOrder | null {
    return this.answer(this.orders.get(`${table}/${columnKey}`)) ?? null;
  }

  word(key: string): WordMeaning | null | undefined {
    return this.answer(this.words.get(key));
  }

  readsShortYears(): boolean {
    return this.answer(this.shortYears) === "2000 to 2099";
  }

  /** What a person said of years of two digits; undefined where nothing. */
  get shortYearsMean(): ShortYearMeaning | undefined {
    return this.shortYears?.to;
  }

  /** What a word among areas stands for: null where it is not settled yet, undefined where nothing is said of it. */
  area(key: string): string | null | undefined {
    return this.answer(this.areas.get(key));
  }

  name(heading: string, key: string): string | undefined {
    return this.answer(this.names.get(`${headingKey(heading)}/${key}`));
  }

  /** Marks the heading decisions that a heading of the workbook met. */
  seeHeading(table: TableName, key: string): void {
    for (const each of this.headingDecisions) {
      if (each.table === table && each.key === key) this.needed.add(each.number);
    }
  }

  /** Marks a decision about a sheet or a skill that something in the workbook met. */
  see(decision: Decision): void {
    const number = this.decisions.indexOf(decision);
    if (number >= 0) this.needed.add(number);
  }

  /** Lists every decision in force, and gives those that were needed in words. */
  report(findings: FindingCollector): string[] {
    const met = this.decisions.filter(({ revoked }, number) => !revoked && this.needed.has(number));
    const repairs = this.decisions.flatMap((each, number) => {
      if (each.revoked || !isRepair(each)) return [];
      const words = `${inWords(each)} (correction ${number + 1})`;
      const table = tableOf(each);
      if (!this.needed.has(number)) {
        findings.workbook("decision-unused", table, { advice: `${words}: nothing in the workbook needs it.` });
        return [];
      }
      findings.workbook("decision-applied", table, {
        advice: `${words}. Revoke the correction if it is no longer right.`,
      });
      return [`${words}.`];
    });
    return [...understandingInWords(met), ...repairs];
  }

  private answer<T>(found: Numbered<T> | undefined): T | undefined {
    if (found) this.needed.add(found.number);
    return found?.to;
  }

  private follow(aliases: ReadonlyMap<string, Numbered<string>>, start: string): string {
    let key = start;
    for (let steps = 0; steps <= aliases.size; steps += 1) {
      const alias = aliases.get(key);
      if (!alias || alias.to === key) return key;
      this.needed.add(alias.number);
      key = alias.to;
    }
    return start;
  }

  private take(each: Decision, number: number, headings: Map<TableName, Map<string, string>>): void {
    if (each.kind === "same-child") this.aliases.child.set(keyOf(each.alias), { to: keyOf(each.child), number });
    else if (each.kind === "skill-alias") this.aliases.skill.set(keyOf(each.alias), { to: keyOf(each.skill), number });
    else if (each.kind === "date-order") this.addOrder(each, number);
    else if (each.kind === "two-digit-years") this.shortYears = { to: each.means, number };
    else if (each.kind === "heading") this.addHeading(headings, each, number);
    else if (each.kind === "word") this.words.set(wordKey(each.word), { to: each.means, number });
    else if (each.kind === "area") this.areas.set(wordKey(each.word), { to: each.means, number });
    else if (each.kind === "name")
      this.names.set(`${headingKey(each.column)}/${keyOf(each.spelling)}`, { to: each.means, number });
  }

  private addOrder(each: Extract<Decision, { kind: "date-order" }>, number: number): void {
    const spec = TABLES.find(({ name }) => name === each.table);
    const column = spec ? columnMeant(spec, each.column) : null;
    if (spec) this.orders.set(`${spec.name}/${column?.key ?? wideKey(each.column)}`, { to: each.order, number });
  }

  private addHeading(
    headings: Map<TableName, Map<string, string>>,
    each: Extract<Decision, { kind: "heading" }>,
    number: number,
  ): void {
    const name = TABLES.find((spec) => spec.name === each.table)?.name;
    const column = name ? columnMeant(specOf(name), each.means) : null;
    if (!name || !column) return;
    const key = headingKey(each.heading);
    headings.set(name, (headings.get(name) ?? new Map<string, string>()).set(key, column.key));
    this.headingDecisions.push({ table: name, key, number });
  }
}

/** What a decision settles, with its number among them. */
interface Numbered<T> {
  readonly to: T;
  readonly number: number;
}

function tableOf(each: Repair): string {
  if ("table" in each) return each.table;
  return each.kind === "skill-alias" ? "Skills" : "Children";
}

/** What a decision says, without the text of a cell of Children or Observations. */
function inWords(each: Decision): string {
  if (each.kind === "same-child") return "Two ids are read as one child";
  if (each.kind === "skill-alias") return `Another way of writing is read as the skill ${each.skill}`;
  if (each.kind === "two-digit-years")
    return `Years of two digits are ${each.means === LEAVE_OUT ? "left out" : `read as ${each.means}`}`;
  if (each.kind === "date-order") return `Text dates of ${each.table}, ${each.column}, are read ${each.order}`;
  return each.kind === "heading" ? `A heading of ${each.table} is read as ${each.means}` : "";
}
