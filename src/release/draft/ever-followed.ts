import { groupOfEverFollowed } from "../../tables/context";
import { LOSS } from "./builder";
import { type Drafting, isoDates } from "./drafting";
import { ALL_AGES, keyOf } from "./keys";
import { Tally } from "./tally";

/** Children ever followed, in every scope: the whole that reached-by-age and age-when-met are parts of. */
export class EverFollowed {
  readonly groupOf: Int32Array;
  private readonly tally: Tally;
  private readonly added = new Set<number>();

  constructor(private readonly drafting: Drafting) {
    this.groupOf = groupOfEverFollowed(drafting.context);
    this.tally = new Tally(drafting.scopes.list.length);
    for (const child of drafting.families.inOrder) {
      const scopes = drafting.scopes.ofGroup[this.groupOf[child] as number] ?? [];
      for (const scope of scopes) this.tally.add(scope, drafting.families.ofChild[child] as number);
    }
  }

  isHeld(scope: number): boolean {
    return this.tally.of(scope).count > 0;
  }

  /** @param table - that prints it; null: it is only worked out */
  children(scope: number, table: string | null): number {
    const { builder, scopes, context } = this.drafting;
    const { key, words } = scopes.list[scope]!;
    return builder.cell({
      key: keyOf({ ...this.keyHead(), group: key, subject: "", ages: ALL_AGES, column: "children" }),
      place: [
        table ?? "reached-by-age",
        ": ",
        words === "" ? "" : `${words}, `,
        `children ever followed by ${isoDates(context).asOf}`,
      ].join(""),
      ...this.tally.of(scope),
      showing: table === null ? "never" : "table",
      loss: LOSS.children,
    });
  }

  /** Scopes that add up to this one, as far as they hold anybody. */
  partsOf(scope: number): number[] {
    return this.drafting.scopes.list[scope]!.parts.filter((part) => this.isHeld(part));
  }

  /** A total as the sum of its parts, said once. */
  addTotal(scope: number): void {
    if (this.added.has(scope)) return;
    this.added.add(scope);
    const parts = this.partsOf(scope).map((part) => this.children(part, null));
    this.drafting.builder.adds(this.children(scope, null), parts);
  }

  /** Groups of the table, in its order. */
  groups(): { readonly group: number; readonly scope: number }[] {
    const { context, scopes } = this.drafting;
    return context.groups.values
      .map((_, group) => ({ group, scope: scopes.list.findIndex((each) => each.group === group) }))
      .filter(({ scope }) => this.isHeld(scope));
  }

  /** Totals that no table prints. */
  totals(): number[] {
    return this.drafting.scopes.list.flatMap(({ group }, scope) =>
      group === null && this.isHeld(scope) ? [scope] : [],
    );
  }

  keyHead(): { readonly population: string; readonly when: string } {
    return { population: "ever followed", when: isoDates(this.drafting.context).asOf };
  }
}
