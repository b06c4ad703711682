import type { Cohort } from "../../cohort/cohort";
import { NOT_FOLLOWED } from "../../cohort/following";

/** The values of a child's group where it is counted on a day, and among those ever in the program: of two enrolments they may differ. */
export interface Place {
  readonly own: readonly string[];
  readonly ever: readonly string[];
}

/** The places that children of the records have, under the headings of a way to group. */
export class Places {
  readonly list: Place[] = [];
  private readonly indexOf = new Map<string, number>();
  private readonly columns: readonly (Cohort["enrolments"]["columns"][number] | undefined)[];

  constructor(
    { enrolments }: Cohort,
    private readonly headings: readonly string[],
  ) {
    this.columns = headings.map((heading) => enrolments.columns.find((column) => column.heading === heading));
  }

  /** False where the records no longer have a column of that heading. */
  get isKnown(): boolean {
    return this.columns.every((column) => column !== undefined);
  }

  /** @param rows - of Enrolments; NOT_FOLLOWED: that of the other */
  add(own: number, ever: number): number {
    const [here, all] = [
      this.valuesOf(own === NOT_FOLLOWED ? ever : own),
      this.valuesOf(ever === NOT_FOLLOWED ? own : ever),
    ];
    const name = JSON.stringify([here, all]);
    const known = this.indexOf.get(name);
    if (known !== undefined) return known;
    this.indexOf.set(name, this.list.length);
    return this.list.push({ own: here, ever: all }) - 1;
  }

  /** Of each place, whether it lies in the group of a key. */
  within(group: string, side: keyof Place): boolean[] {
    const pairs = pairsOf(group).map(([heading, value]) => [this.headings.indexOf(heading), value] as const);
    return this.list.map((place) => pairs.every(([at, value]) => place[side][at] === value));
  }

  private valuesOf(row: number): string[] {
    return this.columns.map((column) => column?.values[row] ?? "");
  }
}

/** `Site=North;Therapist=T1` as headings and values, a mark of the text itself standing after a backslash. */
export function pairsOf(group: string): (readonly [heading: string, value: string])[] {
  const pairs = group.match(/(?:\\.|[^;\\])+/gs) ?? [];
  return pairs.map((pair) => {
    const [, heading = "", value = ""] = /^((?:\\.|[^=\\])*)=(.*)$/s.exec(pair) ?? [];
    return [unescaped(heading), unescaped(value)] as const;
  });
}

export function headingsOf(group: string): string[] {
  return pairsOf(group).map(([heading]) => heading);
}

function unescaped(text: string): string {
  return text.replace(/\\(.)/gs, "$1");
}
