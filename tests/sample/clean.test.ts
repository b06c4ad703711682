import { dayOf, isoOf } from "../../src/age/day";
import { makeSample, type SampleTable } from "../../src/sample/make-sample";
import { AREAS } from "../../src/records/records";

const sample = makeSample({ children: 240, seed: 7 });
const LAST = dayOf(2026, 9, 30);

function table(name: string): SampleTable {
  return sample.tables.find((each) => each.name === name) as SampleTable;
}

/** The cells of one column. */
function column(name: string, heading: string): readonly (string | number | null)[] {
  const at = table(name).headings.indexOf(heading);
  return table(name).rows.map((row) => row[at] ?? null);
}

test("the size that the program is said to have", () => {
  expect(new Set(column("Children", "Child")).size).toBe(240);
  expect(new Set(column("Children", "Therapist")).size).toBe(12);
  expect(new Set(column("Children", "Site"))).toEqual(new Set(["North", "River", "Hill"]));
  expect(table("Observations").rows.length).toBeGreaterThan(20_000);
  expect(table("Observations").rows.length).toBeLessThan(40_000);
  expect(table("Children").rows.length).toBeGreaterThan(245);
});

test("three years of records, up to the last day", () => {
  const days = column("Observations", "Date") as number[];
  expect(isoOf(days.reduce((a, b) => Math.min(a, b)))).toMatch(/^2023-10/);
  expect(isoOf(days.reduce((a, b) => Math.max(a, b)))).toMatch(/^2026-09/);
  for (const each of sample.tables) {
    for (const heading of each.dayColumns) {
      expect(column(each.name, heading).every((day) => day === null || (day as number) <= LAST)).toBe(true);
    }
  }
});

test("no look before birth, outside enrolment, or typed in before it was made", () => {
  const stays = new Map<unknown, { birth: number; spans: [number, number][] }>();
  for (const [id, birth, , , , enrolled, left] of table("Children").rows) {
    const entry = stays.get(id) ?? { birth: birth as number, spans: [] };
    entry.spans.push([enrolled as number, (left as number | null) ?? LAST + 1]);
    stays.set(id, entry);
  }
  const wrong = table("Observations").rows.filter(([id, , day, , , entered]) => {
    const child = stays.get(id);
    const on = day as number;
    const followed = child?.spans.some(([from, to]) => from <= on && on < to);
    return !child || on < child.birth || !followed || (entered !== null && (entered as number) < on);
  });
  expect(wrong).toEqual([]);
});

test("codes and list words only: no cell that could be anybody's name", () => {
  const allowed: Record<string, Record<string, RegExp>> = {
    Children: {
      Child: /^AF-\d{4}$/,
      Gestation: /^(\d\d\+\d|\d\dw(\dd)?|\d\d \d\/7|\d{2,3})$/,
      Site: /^(North|River|Hill)$/,
      Therapist: /^T(0[1-9]|1[0-2])$/,
      Family: /^F\d{3}$/,
      "Home language": /^L[123]$/,
    },
    Observations: {
      Child: /^AF-\d{4}$/,
      Skill: /^[a-z-]+$/,
      Result: /^(met|emerging|not met|lost)$/,
      Observer: /^T(0[1-9]|1[0-2])$/,
    },
    Signs: { Child: /^AF-\d{4}$/, Seen: /^(present|absent|not looked for)$/ },
  };
  for (const [name, columns] of Object.entries(allowed)) {
    for (const [heading, form] of Object.entries(columns)) {
      expect(column(name, heading).filter((cell) => cell !== null && !form.test(String(cell)))).toEqual([]);
    }
  }
  for (const name of ["Referrals", "Signs", "Ratings"]) {
    const days = table(name).dayColumns;
    for (const heading of table(name).headings.filter((each) => each !== "Child" && !days.includes(each))) {
      expect(new Set(column(name, heading)).size).toBeLessThan(40);
    }
  }
});

test("every notation of gestation that is accepted, but no bare decimal", () => {
  const written = column("Children", "Gestation").filter((cell) => cell !== null);
  for (const form of [/^\d\d\+\d$/, /^\d\dw\dd$/, /^\d\dw$/, /^\d\d \d\/7$/, /^\d\d$/, /^\d{3}$/]) {
    expect(written.some((cell) => form.test(String(cell)))).toBe(true);
  }
  expect(written.some((cell) => String(cell).includes("."))).toBe(false);
});

test("the planted cluster is there by plain counting", () => {
  expect(sample.truth.cluster).toMatchObject({
    site: "River",
    area: "speech",
    firstMonth: "2026-01",
    lastMonth: "2026-03",
  });
  const count = new Map<string, number>();
  for (const [id, referred, areas] of table("Referrals").rows) {
    const month = isoOf(referred as number).slice(0, 7);
    const site = siteOn(id as string, referred as number);
    if (String(areas).split("; ").includes("speech"))
      count.set(`${site} ${month}`, (count.get(`${site} ${month}`) ?? 0) + 1);
  }
  const inCluster = threeMonths(count, "River", "2026-01");
  expect(inCluster).toBeGreaterThanOrEqual(10);
  for (const site of ["North", "River", "Hill"]) {
    for (const month of MONTHS.filter((each) => site !== "River" || each < "2025-11" || each > "2026-03")) {
      expect(threeMonths(count, site, month)).toBeLessThan(inCluster / 1.5);
    }
  }
});

test("late entries, two observers, losses, children who left and who came back, all there", () => {
  const rows = table("Observations").rows;
  const late = rows.filter(([, , day, , , entered]) => entered !== null && (entered as number) - (day as number) > 14);
  expect(late.length / rows.length).toBeGreaterThan(0.05);
  expect(rows.filter((row) => row[3] === "lost").length).toBeGreaterThan(3);
  const observers = new Map<string, Set<unknown>>();
  for (const [id, skill, day, , observer] of rows) {
    const key = `${id} ${skill} ${day}`;
    observers.set(key, (observers.get(key) ?? new Set()).add(observer));
  }
  const pairs = [...observers.values()].filter((each) => each.size === 2).length;
  expect(pairs / observers.size).toBeGreaterThan(0.02);
  expect(column("Children", "Left").filter((left) => left !== null).length).toBeGreaterThan(60);
});

test("levels from 1 to 5, areas of the six, steps in their order", () => {
  const levels = [...column("Ratings", "Entry level"), ...column("Ratings", "Exit level")].filter(
    (each) => each !== null,
  );
  expect(new Set(levels)).toEqual(new Set([1, 2, 3, 4, 5]));
  expect(new Set(column("Ratings", "Gained any skill"))).toEqual(new Set(["yes", "no", null]));
  const areas = new Set(column("Referrals", "Area").flatMap((each) => String(each).split("; ")));
  expect([...areas].sort()).toEqual([...AREAS].sort());
  for (const row of table("Referrals").rows) {
    const steps = [row[1], row[6], row[7], row[9]].filter((day) => day !== null) as number[];
    expect(steps).toEqual([...steps].sort((a, b) => a - b));
  }
});

test("the same seed gives the same tables, another seed others, and later draws move no earlier ones", () => {
  expect(makeSample({ children: 240, seed: 7 }).tables).toEqual(sample.tables);
  expect(makeSample({ children: 240, seed: 8 }).tables).not.toEqual(sample.tables);
});

test.each([
  [0, 7],
  [2.5, 7],
  [240, -1],
  [240, 0.5],
])("refuses %f children with seed %f", (children, seed) => {
  expect(() => makeSample({ children, seed })).toThrow(RangeError);
});

const MONTHS = Array.from({ length: 34 }, (_, index) => {
  const month = 9 + index;
  return `${2023 + Math.floor(month / 12)}-${String((month % 12) + 1).padStart(2, "0")}`;
});

function threeMonths(count: ReadonlyMap<string, number>, site: string, first: string): number {
  const [year = 0, month = 0] = first.split("-").map(Number);
  return [0, 1, 2].reduce((sum, step) => {
    const index = year * 12 + month - 1 + step;
    return sum + (count.get(`${site} ${Math.floor(index / 12)}-${String((index % 12) + 1).padStart(2, "0")}`) ?? 0);
  }, 0);
}

function siteOn(id: string, day: number): unknown {
  const row = table("Children").rows.find(
    ([child, , , , , from, to]) => child === id && (from as number) <= day && (to === null || day < (to as number)),
  );
  return row?.[3];
}
