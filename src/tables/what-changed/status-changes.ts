import { bandIndex } from "../../age/bands";
import { headingKey, keyOf } from "../../records/cells/words";
import { CellNames } from "./cell-names";
import type { ChangedCell } from "./changed-cell";
import { cellsOf, type Counts } from "./changes";
import { Ledger, type Placed } from "./ledger";
import { COUNTS, type Measure, MEASURES, type Part, timePart } from "./parts";
import { NOWHERE } from "./standing";

/** One child and skill of skill-status, as far as the counts of met-by-band depend on it. */
export interface StatusRow {
  readonly child: string;
  readonly skill: string;
  readonly area: string;
  readonly ageMonths: number;
  readonly box: number;
}

const OUTSIDE: Placed = { cell: NOWHERE, box: NOWHERE };

/**
 * Why counts changed between two days of the same records, by where each child stood with each skill on both. What was
 * entered late cannot be told apart here from what happened; an age that fell can only be a correction.
 */
export function statusChanges(
  earlier: readonly StatusRow[],
  later: readonly StatusRow[],
  edges: readonly number[],
): ChangedCell[] {
  const names = new CellNames([]);
  const ledger = new Ledger(false);
  // the later list first: cells come in the order of today's skills
  const [now, before] = [later, earlier].map((rows) => new Listed(rows, names, edges)) as [Listed, Listed];
  for (const key of new Set([...before.rows.keys(), ...now.rows.keys()])) {
    const [from, to] = [before.rows.get(key), now.rows.get(key)];
    const cause = causeOf(from, to, before, now);
    ledger.addMove("", from?.placed ?? OUTSIDE, to?.placed ?? OUTSIDE, (_, end) => cause(end));
  }
  return cellsOf(names, ledger, { earlier: before.counts(), later: now.counts() });
}

interface ListedRow extends StatusRow {
  readonly placed: Placed;
}

/** In the order of the steps: another list of skills first, then who left and who joined. */
function causeOf(from: ListedRow | undefined, to: ListedRow | undefined, before: Listed, now: Listed) {
  return (end: "from" | "to"): Part => {
    if (from && end === "from" && now.lacks(from)) return "definition";
    const [row, other] = end === "from" ? [from, now] : [to, before];
    if (row && !other.children.has(keyOf(row.child))) return timePart(false, false, NOWHERE, end);
    if (row && other.lacks(row)) return "definition";
    if (from && to && to.ageMonths < from.ageMonths) return "corrected";
    return timePart(true, from?.placed.cell === to?.placed.cell, to?.box ?? NOWHERE, end);
  };
}

/** The rows of one day, by child, skill and area as they are compared. */
class Listed {
  readonly rows: ReadonlyMap<string, ListedRow>;
  readonly children: ReadonlySet<string>;
  private readonly skills: ReadonlySet<string>;

  constructor(rows: readonly StatusRow[], names: CellNames, edges: readonly number[]) {
    const group = names.group([], []);
    this.children = new Set(rows.map(({ child }) => keyOf(child)));
    this.skills = new Set(rows.map(skillKey));
    this.rows = new Map(
      rows.map((row) => {
        const band = names.bandAt(bandIndex(row.ageMonths, edges), edges);
        const cell = names.cell(group, names.skill(row.skill, row.area), band);
        return [`${keyOf(row.child)} ${skillKey(row)}`, { ...row, placed: { cell, box: row.box } }];
      }),
    );
  }

  /** Whether the skill of a row is not on the list of this day; a day without children says nothing of its list. */
  lacks(row: StatusRow): boolean {
    return this.skills.size > 0 && !this.skills.has(skillKey(row));
  }

  counts(): Counts {
    const counts = new Map<number, Record<Measure, number>>();
    for (const { placed, box } of this.rows.values()) {
      const sums = counts.get(placed.cell) ?? { children: 0, assessed: 0, met: 0 };
      for (const measure of MEASURES) sums[measure] += COUNTS[measure][box] ? 1 : 0;
      counts.set(placed.cell, sums);
    }
    return counts;
  }
}

function skillKey({ skill, area }: StatusRow): string {
  return JSON.stringify([keyOf(skill), headingKey(area)]);
}
