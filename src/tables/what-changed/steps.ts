import type { Ledger, Placed } from "./ledger";
import { type Measure, type Part, ROW_PARTS, timePart } from "./parts";
import { RowDifferences } from "./row-differences";
import { NOWHERE, type Standing } from "./standing";

/** What one child did with one skill between two standings. */
interface Move {
  readonly child: { readonly from: number; readonly to: number };
  readonly skill: { readonly from: number; readonly to: number };
  readonly from: Placed;
  readonly to: Placed;
}

/** The cause of a change of one cell: of the cell that the child came from, or of the one that it went to. */
type Cause = (move: Move, measure: Measure, end: "from" | "to") => Part;

/** First step: the same day under the same settings and skills, by another workbook. */
export function stepOfRows(ledger: Ledger, from: Standing, to: Standing): void {
  const differences = new RowDifferences(from.side, to.side);
  addStep(ledger, from, to, (move, measure) => rowPart(differences, from, to, move, measure));
}

/** Second step: the same workbook and day under other settings and skills. */
export function stepOfDefinitions(ledger: Ledger, from: Standing, to: Standing): void {
  addStep(ledger, from, to, () => "definition");
}

/** Third step: the same workbook, settings and skills on a later day. */
export function stepOfTime(ledger: Ledger, from: Standing, to: Standing): void {
  addStep(ledger, from, to, (move, _, end) => {
    const isSameGroup = from.groupOf(move.child.from) === to.groupOf(move.child.to);
    return timePart(isSameGroup, move.from.cell === move.to.cell, move.to.box, end);
  });
}

/**
 * A child's own rows are a cause where they moved its place, its checks where they changed the box; the number of children in
 * a cell depends on the place alone. What no row of its own explains is a correction: the order of two rows of Children.
 */
function rowPart(differences: RowDifferences, from: Standing, to: Standing, move: Move, measure: Measure): Part {
  const found = new Set<Part>();
  if (move.from.cell !== move.to.cell) {
    const basis = from.skills[move.skill.from]?.ageBasis ?? "corrected";
    for (const part of differences.ofChild(move.child.from, move.child.to, basis)) found.add(part);
  }
  if (measure !== "children" && move.from.box !== move.to.box) {
    for (const part of checkParts(differences, from, to, move)) found.add(part);
  }
  return ROW_PARTS.find((part) => found.has(part)) ?? "corrected";
}

/** The checks of the skill itself or, where they are the same, of the skills that replace it. */
function checkParts(
  differences: RowDifferences,
  from: Standing,
  to: Standing,
  { child, skill }: Move,
): ReadonlySet<Part> {
  const partsOf = (earlier: number, later: number) =>
    differences.ofChecks({ child: child.from, skill: earlier }, { child: child.to, skill: later });
  const own = partsOf(skill.from, skill.to);
  if (own.size > 0) return own;
  const replacing = from.skillsAfter(skill.from);
  return new Set(replacing.flatMap((earlier) => [...partsOf(earlier, to.indexOf(from.skills[earlier]))]));
}

function addStep(ledger: Ledger, from: Standing, to: Standing, cause: Cause): void {
  const skills = pairsOf(from.skillAt, to.skillAt);
  for (const { key, ...child } of pairsOf(from.childAt, to.childAt)) {
    if (from.groupOf(child.from) === NOWHERE && to.groupOf(child.to) === NOWHERE) continue;
    for (const skill of skills) {
      const move: Move = {
        child,
        skill,
        from: { cell: from.cellOf(child.from, skill.from), box: from.boxOf(child.from, skill.from) },
        to: { cell: to.cellOf(child.to, skill.to), box: to.boxOf(child.to, skill.to) },
      };
      ledger.addMove(key, move.from, move.to, (measure, end) => cause(move, measure, end));
    }
  }
}

/** The places of the same thing in two lists, NOWHERE where one lacks it. */
function pairsOf(from: ReadonlyMap<string, number>, to: ReadonlyMap<string, number>) {
  const keys = new Set([...from.keys(), ...to.keys()]);
  return [...keys].map((key) => ({ key, from: from.get(key) ?? NOWHERE, to: to.get(key) ?? NOWHERE }));
}
