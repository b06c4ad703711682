import { dayFromIso, isoOf } from "../../../src/age/day";

/** One invented program, from which both a workbook and the true figures are made. */
export interface Plan {
  readonly asOf: string;
  readonly children: readonly PlannedChild[];
  readonly skills: readonly PlannedSkill[];
  readonly checks: readonly PlannedCheck[];
}

export interface PlannedChild {
  readonly id: string;
  readonly birth: number;
  /** Weeks before the due date. */
  readonly weeksEarly: number;
  readonly site: string;
  readonly therapist: string;
  readonly enrolled: number;
  readonly left: number | null;
}

export interface PlannedSkill {
  readonly id: string;
  readonly area: string;
}

export interface PlannedCheck {
  readonly child: string;
  readonly skill: string;
  readonly day: number;
  readonly result: "met" | "emerging" | "not met";
}

export interface Truth {
  readonly inProgram: number;
  /** Skill checks met, and up to date, of the children in the program. */
  readonly met: number;
  readonly assessed: number;
  readonly bySite: Readonly<Record<string, number>>;
  readonly born37Early: number;
}

const SKILLS: readonly PlannedSkill[] = [
  { id: "Rolls over", area: "gross motor" },
  { id: "Sits alone", area: "gross motor" },
  { id: "Walks alone", area: "gross motor" },
  { id: "Picks up a pea", area: "fine motor" },
  { id: "Stacks two blocks", area: "fine motor" },
  { id: "Says first word", area: "speech" },
  { id: "Points to ask", area: "speech" },
  { id: "Waves goodbye", area: "speech" },
];
const SITES = ["Mill Street", "Eastside", "River House"];
const THERAPISTS = ["Dana", "Ruth", "Omar"];
const RECHECK_DAYS = 90;

/** The same seed gives the same program. Dates keep away from the edges of rules, so that the truth needs no rule of edges. */
export function makePlan(seed: number, children = 30): Plan {
  const next = generator(seed);
  const pick = <T>(list: readonly T[]) => list[Math.floor(next() * list.length)] as T;
  const asOf = dayFromIso("2026-09-30") as number;
  const own = Array.from({ length: children }, (_, i): PlannedChild => {
    const birth = asOf - 200 - Math.floor(next() * 700);
    const enrolled = birth + 60 + Math.floor(next() * 60);
    const left = next() < 0.25 ? Math.min(enrolled + 120 + Math.floor(next() * 60), asOf - 5) : null;
    const weeksEarly = next() < 0.4 ? 4 + Math.floor(next() * 8) : 0;
    return {
      id: `K-${String(i + 1).padStart(3, "0")}`,
      birth,
      weeksEarly,
      site: pick(SITES),
      therapist: pick(THERAPISTS),
      enrolled,
      left,
    };
  });
  return {
    asOf: "2026-09-30",
    children: own,
    skills: SKILLS,
    checks: own.flatMap((child) => checksOf(child, asOf, next)),
  };
}

function checksOf(child: PlannedChild, asOf: number, next: () => number): PlannedCheck[] {
  const last = (child.left ?? asOf) - 1;
  const metFrom = SKILLS.map(() => child.enrolled + Math.floor(next() * 500));
  const checks: PlannedCheck[] = [];
  for (let day = child.enrolled + 3; day <= last; day += 40) {
    SKILLS.forEach(({ id }, i) => {
      const met = metFrom[i] as number;
      const result = day >= met ? "met" : day >= met - 40 ? "emerging" : "not met";
      if (next() < 0.8) checks.push({ child: child.id, skill: id, day, result });
    });
  }
  // Nothing lies within three days of the recheck limit.
  return checks.filter(({ day }) => Math.abs(asOf - day - RECHECK_DAYS) > 3);
}

/** The true figures, counted here and by nothing of the project but its calendar. */
export function truthOf({ asOf, children, skills, checks }: Plan): Truth {
  const day = dayFromIso(asOf) as number;
  const here = children.filter((each) => each.enrolled <= day && (each.left === null || day < each.left));
  const boxes = here.flatMap((child) =>
    skills.map((skill) =>
      boxOf(
        checks.filter((each) => each.child === child.id && each.skill === skill.id),
        day,
      ),
    ),
  );
  const bySite: Record<string, number> = {};
  for (const { site } of here) bySite[site] = (bySite[site] ?? 0) + 1;
  return {
    inProgram: here.length,
    met: boxes.filter((box) => box === "met").length,
    assessed: boxes.filter((box) => box === "met" || box === "not met").length,
    bySite,
    born37Early: children.filter(({ weeksEarly }) => weeksEarly > 3).length,
  };
}

function boxOf(own: readonly PlannedCheck[], day: number): "met" | "not met" | "out of date" | "not checked" {
  if (own.length === 0) return "not checked";
  if (own.some(({ result }) => result === "met")) return "met";
  return day - Math.max(...own.map((each) => each.day)) <= RECHECK_DAYS ? "not met" : "out of date";
}

export function iso(day: number): string {
  return isoOf(day);
}

/** Park and Miller (1988), Commun. ACM 31:1192-1201: enough chance for invented children. */
function generator(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}
