import type { DateOrder } from "../cells/date-codes";
import type { Decision } from "./decisions";
import type { FindingCollector } from "../findings/collector";
import { columnMeant } from "../headings/headings";
import type { DecidedHeadings } from "../headings/table-match";
import type { Decided } from "../rows/reading";
import { specOf, TABLES } from "../tables";
import type { TableName } from "../tables/spec";
import { headingKey, keyOf } from "../cells/words";

/** The key under which the order of dates in a skill column of a wide sheet is decided. */
export function wideKey(heading: string): string {
  return `skill:${headingKey(heading)}`;
}

/** The repair decisions of a run. Revoked ones are not there; each remembers whether anything needed it. */
export class DecisionsInForce implements Decided {
  readonly headings: DecidedHeadings;
  private readonly aliases = { child: new Map<string, Aliased>(), skill: new Map<string, Aliased>() };
  private readonly orders = new Map<string, { order: DateOrder; number: number }>();
  private readonly headingDecisions: { table: TableName; key: string; number: number }[] = [];
  private readonly needed = new Set<number>();

  constructor(private readonly decisions: readonly Decision[]) {
    const headings = new Map<TableName, Map<string, string>>();
    decisions.forEach((each, number) => {
      if (each.revoked) return;
      if (each.kind === "same-child") this.aliases.child.set(keyOf(each.alias), { to: keyOf(each.child), number });
      else if (each.kind === "skill-alias")
        this.aliases.skill.set(keyOf(each.alias), { to: keyOf(each.skill), number });
      else if (each.kind === "date-order") this.addOrder(each, number);
      else this.addHeading(headings, each, number);
    });
    this.headings = headings;
  }

  child(key: string): string {
    return this.follow(this.aliases.child, key);
  }

  skill(key: string): string {
    return this.follow(this.aliases.skill, key);
  }

  order(table: TableName, columnKey: string): DateOrder | null {
    const found = this.orders.get(`${table}/${columnKey}`);
    if (!found) return null;
    this.needed.add(found.number);
    return found.order;
  }

  /** Marks the heading decisions that a heading of the workbook met. */
  seeHeading(table: TableName, key: string): void {
    for (const each of this.headingDecisions) {
      if (each.table === table && each.key === key) this.needed.add(each.number);
    }
  }

  /** Lists every decision in force, and gives those that were needed in words. */
  report(findings: FindingCollector): string[] {
    return this.decisions.flatMap((each, number) => {
      if (each.revoked) return [];
      const words = `${inWords(each)} (decision ${number + 1})`;
      const table = "table" in each ? each.table : each.kind === "same-child" ? "Children" : "Skills";
      if (!this.needed.has(number)) {
        findings.workbook("decision-unused", table, { advice: `${words}: nothing in the workbook needs it.` });
        return [];
      }
      findings.workbook("decision-applied", table, { advice: `${words}. Revoke the decision if it no longer holds.` });
      return [`${words}.`];
    });
  }

  private follow(aliases: ReadonlyMap<string, Aliased>, start: string): string {
    let key = start;
    for (let steps = 0; steps <= aliases.size; steps += 1) {
      const alias = aliases.get(key);
      if (!alias || alias.to === key) return key;
      this.needed.add(alias.number);
      key = alias.to;
    }
    return start;
  }

  private addOrder(each: Extract<Decision, { kind: "date-order" }>, number: number): void {
    const spec = TABLES.find(({ name }) => name === each.table);
    const column = spec ? columnMeant(spec, each.column) : null;
    if (spec) this.orders.set(`${spec.name}/${column?.key ?? wideKey(each.column)}`, { order: each.order, number });
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

interface Aliased {
  readonly to: string;
  readonly number: number;
}

/** What a decision says, without the text of a cell of Children or Observations. */
function inWords(each: Decision): string {
  if (each.kind === "same-child") return "Two ids are read as one child";
  if (each.kind === "skill-alias") return `Another way of writing is read as the skill ${each.skill}`;
  if (each.kind === "date-order") return `Text dates of ${each.table}, ${each.column}, are read ${each.order}`;
  return `A heading of ${each.table} is read as ${each.means}`;
}
