import { type Certificate, certify } from "./certificate";
import type { Knowledge } from "./knowledge";
import type { LinearModel, Solver } from "./linear-model";
import { askAll, askWhole, type Answer, openPart, type OpenPart, type Question } from "./part-models";
import { type Part, partsOf, positionsIn } from "./parts";
import { type CountSystem, isSecret, type Span } from "./system";
import { isOutside, type Witness, wholeWitness } from "./witness";

/** What an outsider can prove of a release, cell by cell. */
export interface Attack {
  /** Cells whose count must not be proved to be small. */
  readonly attacked: number;
  /** Tables of whole numbers that agree with all that is shown: each secret cell lies outside its span in one of them. */
  readonly witnesses: readonly Witness[];
  /** Cells that are not safe. Empty, with nothing left open: the release is safe. */
  readonly disclosures: readonly Disclosure[];
  /** Cells not judged, because their part had reached the number of disclosures that was asked for. */
  readonly leftOpen: readonly number[];
}

export interface Disclosure {
  readonly cell: number;
  /** Null where no fraction proves it, but no table of whole numbers was found either: not safe all the same. */
  readonly lowest: Certificate | null;
  readonly highest: Certificate | null;
}

/**
 * Attacks a release as an outsider who knows that counts are whole and not negative, everything shown, and the rule, but
 * not which hidden cells are small (METHOD.md, section 7).
 *
 * Neither answer rests on the solver: safe cells carry a witness checked by addition, the others a certificate worked
 * out again in exact fractions.
 */
export function attack(system: CountSystem, knowledge: Knowledge, solver: Solver): Attack {
  return attackParts(system, knowledge, partsOf(system, knowledge), { solver });
}

export interface AttackOptions {
  readonly solver: Solver;
  /** A part is left alone once this many of its cells are found not safe; all are found when left out. */
  readonly mostInPart?: number;
  /** Cells known to be safe already, which are not attacked again. */
  readonly isSafe?: (cell: number) => boolean;
  /** Asked between questions: true ends the attack, with what was not judged left open. */
  readonly isTimeUp?: () => boolean;
}

export function attackParts(
  system: CountSystem,
  knowledge: Knowledge,
  parts: readonly Part[],
  { solver, mostInPart = Infinity, isSafe = () => false, isTimeUp = () => false }: AttackOptions,
): Attack {
  const fronts = parts.flatMap((part) => {
    const targets = part.cells.filter((cell) => isSecret(system.cells[cell]!) && !isSafe(cell));
    return targets.length === 0 ? [] : [new Front(system, knowledge, part, targets, solver)];
  });
  try {
    return attackFronts(fronts, knowledge, { solver, mostInPart, isTimeUp });
  } finally {
    fronts.forEach((front) => front.close());
  }
}

function attackFronts(
  fronts: readonly Front[],
  knowledge: Knowledge,
  { solver, mostInPart, isTimeUp }: Required<Pick<AttackOptions, "solver" | "mostInPart" | "isTimeUp">>,
): Attack {
  const attacked = fronts.reduce((sum, { open }) => sum + open.size, 0);
  sweep(fronts, knowledge, solver);
  const leftOf = () => openOf(fronts).filter(({ disclosures }) => disclosures.length < mostInPart);
  for (let left = leftOf(); left.length > 0 && !isTimeUp(); left = leftOf()) {
    tryOne(left, "lowest", knowledge, solver);
    tryOne(
      left.filter((front) => front.aim !== null),
      "highest",
      knowledge,
      solver,
    );
    left.forEach((front) => front.giveUp());
  }
  return {
    attacked,
    witnesses: fronts.flatMap(({ witnesses }) => witnesses),
    disclosures: fronts.flatMap(({ disclosures }) => disclosures),
    leftOpen: fronts.flatMap(({ open }) => [...open]),
  };
}

/** Sweeps that one table may answer for many cells at once: all as low as they go, then all as high as is needed. */
const SWEEP_WEIGHTS: readonly ((at: number) => number)[] = [
  () => 1,
  (at) => 1 + ((at * 7) % 5),
  (at) => 1 + ((at * 3) % 7),
];

function sweep(fronts: readonly Front[], knowledge: Knowledge, solver: Solver): void {
  let left = fronts.filter(({ open }) => open.size > 1);
  for (const weight of SWEEP_WEIGHTS) {
    const before = new Map(left.map((front) => [front, front.open.size]));
    for (const sense of ["minimise", "maximise"] as const) {
      const questions = left.map((front) => front.all(weight));
      const answers = answersOf(left, knowledge, sense, questions, solver);
      left.forEach((front, at) =>
        front.takeNear(sense, questions[at] as Question, answers[at] as Answer, solver, SWEEP_GAP),
      );
      left = left.filter(({ open }) => open.size > 1);
    }
    // a part whose last two sweeps found nothing has little left to find this way
    left = left.filter((front) => front.open.size < (before.get(front) as number));
  }
}

function tryOne(fronts: readonly Front[], side: Certificate["side"], knowledge: Knowledge, solver: Solver): void {
  const questions = fronts.map((front) => front.one(side));
  const answers = answersOf(fronts, knowledge, side === "lowest" ? "minimise" : "maximise", questions, solver);
  fronts.forEach((front, at) => front.judge(side, answers[at] as Answer, solver));
}

/** Large parts are asked one by one, each in a model that stays open; small ones together. */
function answersOf(
  fronts: readonly Front[],
  knowledge: Knowledge,
  sense: LinearModel["sense"],
  questions: readonly Question[],
  solver: Solver,
): Answer[] {
  const together = questions.filter((_, at) => fronts[at]!.asking === null);
  const answers = askAll(solver, knowledge, sense, together);
  let next = 0;
  return questions.map((question, at) => fronts[at]!.asking?.ask(sense, question) ?? (answers[next++] as Answer));
}

function openOf(fronts: readonly Front[]): Front[] {
  return fronts.filter(({ open }) => open.size > 0);
}

/** A limit on the search for whole numbers where the solver's answer is not whole: the same on every machine. */
const WHOLE_NODES = 200;

/** A sweep wants many counts outside their spans, not the most there can be: large parts take long to better. */
const SWEEP_GAP = 0.2;

/** Of so large a part no whole numbers are looked for anywhere: what is not found near an answer is hidden better. */
const LARGE = 5000;

/** No count of an earlier release was higher. */
const MOST_UNKNOWN = 1_000_000;

const NO_PROOF = { lowest: null, highest: null };

/** One part under attack. */
class Front {
  readonly open: Set<number>;
  readonly witnesses: Witness[] = [];
  readonly disclosures: Disclosure[] = [];
  /** The cell tried now. */
  aim: number | null = null;
  /** Null: it is asked together with others. */
  readonly asking: OpenPart | null;
  private proofs: Pick<Disclosure, "lowest" | "highest"> = NO_PROOF;

  constructor(
    private readonly system: CountSystem,
    private readonly knowledge: Knowledge,
    private readonly part: Part,
    targets: readonly number[],
    solver: Solver,
  ) {
    this.open = new Set(targets);
    this.asking = openPart(solver, knowledge, part);
  }

  close(): void {
    this.asking?.close();
  }

  all(weight: (at: number) => number): Question {
    const open = [...this.open];
    return {
      part: this.part,
      weights: new Map(open.map((cell, at) => [cell, weight(at)])),
      caps: new Map(open.map((cell) => [cell, this.cap(cell)])),
    };
  }

  one(side: Certificate["side"]): Question {
    if (this.aim === null) this.aimAtNext();
    const cell = this.aim as number;
    const caps = side === "highest" ? [[cell, this.cap(cell)] as const] : [];
    return { part: this.part, weights: new Map([[cell, 1]]), caps: new Map(caps) };
  }

  private aimAtNext(): void {
    [this.aim = null] = this.open;
    this.proofs = NO_PROOF;
  }

  /** Takes a table as witness for every open cell that lies outside its span there. */
  take(counts: Answer["counts"]): boolean {
    const witness = wholeWitness(this.part, this.knowledge, counts);
    if (witness === null) return false;
    const covered = witness.cells.filter(
      (cell, at) => this.open.has(cell) && isOutside(witness.counts[at] as number, this.span(cell)),
    );
    if (covered.length > 0) this.witnesses.push(witness);
    covered.forEach((cell) => this.open.delete(cell));
    return true;
  }

  judge(side: Certificate["side"], answer: Answer, solver: Solver): void {
    const cell = this.aim as number;
    const whole = this.take(answer.counts);
    if (!this.open.has(cell)) {
      this.aim = null;
      return;
    }
    if (!whole && this.reaches(side, answer.counts[positionsIn(this.part).get(cell) as number] as number)) {
      this.takeNear(side === "lowest" ? "minimise" : "maximise", this.one(side), answer, solver);
    }
    this.proofs = { ...this.proofs, [side]: this.provenBy(side, cell, answer) };
    if (!this.open.has(cell)) this.aim = null;
  }

  /** After both sides: what is still open is not safe. */
  giveUp(): void {
    if (this.aim === null) return;
    this.open.delete(this.aim);
    this.disclosures.push({ cell: this.aim, ...this.proofs });
    this.aim = null;
  }

  private reaches(side: Certificate["side"], value: number): boolean {
    const { low, high } = this.span(this.aim as number);
    return side === "lowest" ? value <= low - 1 + 1e-6 : value >= high + 1 - 1e-6;
  }

  /** Takes an answer as it is where it is whole; else asks again in whole numbers, first near the answer, then anywhere. */
  takeNear(sense: LinearModel["sense"], question: Question, answer: Answer, solver: Solver, gap = 0): void {
    if (this.take(answer.counts)) return;
    const isLarge = this.asking !== null && this.part.cells.length > LARGE;
    for (const near of isLarge ? [answer.counts] : [answer.counts, null]) {
      const counts = askWhole(solver, this.knowledge, sense, question, near, {
        nodes: WHOLE_NODES,
        gap: this.asking === null ? 0 : gap,
      });
      if (counts !== null && this.take(counts)) return;
    }
  }

  private provenBy(side: Certificate["side"], cell: number, { duals }: Answer): Certificate | null {
    const certificate = certify(this.part, this.knowledge, { cell, side }, duals);
    const { low, high } = this.span(cell);
    if (certificate === null) return null;
    return (side === "lowest" ? certificate.bound >= low : certificate.bound <= high) ? certificate : null;
  }

  /** As high as is needed; what nobody here knows may stand far above, and must not be taken for a contradiction. */
  private cap(cell: number): number {
    return this.system.cells[cell]!.count === null ? MOST_UNKNOWN : this.span(cell).high + 1;
  }

  private span(cell: number): Span {
    return this.system.cells[cell]!.secret as Span;
  }
}
