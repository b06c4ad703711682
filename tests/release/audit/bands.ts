import { groupOf, type Printed, type PrintedRow, type Reading, rowsOf, take, takeFigure, takeShare } from "./outsider";

const BOXES = ["hadAtFirstLook", "gained", "notMet", "outOfDate", "lost", "notAssessed"];
const COUNTS = [...BOXES, "children", "assessed", "met", "without", "unknown", "notYet", "possible"];

/** Reads met-by-band: boxes in a row, skills in an area, bands of all ages, groups in everybody. */
export function readBands(reading: Reading, printed: Printed): void {
  const table = printed.tables.find(({ id }) => id === "met-by-band");
  if (table === undefined) return;
  const rows = rowsOf(table);
  const groups = [...new Set(rows.map((row) => groupOf(row, printed.by)))];
  const subjects = subjectsOf(reading);
  for (const group of groups) {
    for (const subject of subjects) {
      for (const [from, to] of bandsOf(printed.edges)) {
        const label = labelOf(from, to);
        const row = rows.find((each) => isRow(each, printed, group, subject, label));
        readRow(reading, printed, { group, subject: subject.name, from, to }, row);
      }
      allAges(reading, printed, group, subject.name);
    }
    areas(reading, printed, group);
  }
  if (printed.by.length > 0) everybody(reading, printed, groups);
}

interface Place {
  readonly group: string;
  readonly subject: string;
  readonly from: number;
  readonly to: number;
}

interface Subject {
  readonly name: string;
  readonly skill: string;
  readonly area: string;
}

function subjectsOf({ skills }: Reading): Subject[] {
  return [
    ...skills.map(({ id, area }) => ({ name: id, skill: id, area })),
    ...[...new Set(skills.map(({ area }) => area))].map((area) => ({ name: `all of ${area}`, skill: "all", area })),
  ];
}

function isRow(row: PrintedRow, { by }: Printed, group: string, { skill, area }: Subject, label: string): boolean {
  return groupOf(row, by) === group && row["skill"] === skill && row["area"] === area && row["band"] === label;
}

/** The name of a count; children are the same for all skills of an age basis, and over all ages for all skills. */
function nameOf({ skills }: Reading, { asOf }: Printed, { group, subject, from, to }: Place, column: string): string {
  const isAll = from === -Infinity && to === Infinity;
  const basis = skills.find(({ id }) => id === subject)?.basis;
  const of = column === "children" && basis !== undefined ? (isAll ? "" : basis) : subject;
  return ["followed", asOf, group, of, isAll ? "all ages" : `${from}..${to}`, column].join("|");
}

function readRow(reading: Reading, printed: Printed, place: Place, row: PrintedRow | undefined): void {
  const name = (column: string) => nameOf(reading, printed, place, column);
  tieRow(reading, name);
  COUNTS.forEach((column) => {
    reading.counts.adds(
      name(column),
      pieces(reading, printed, place).map((piece) => nameOf(reading, printed, piece, column)),
    );
  });
  // a row that is not there holds nobody
  if (row === undefined) return void [...BOXES, "children"].forEach((column) => reading.counts.know(name(column), 0));
  // tables leave out rows that hold nobody
  reading.counts.know(name("children"), 1, Infinity);
  COUNTS.slice(0, 9).forEach((column) => take(reading, name(column), row[column] ?? null));
  COUNTS.slice(9).forEach((column) => reading.onSecret(name(column)));
  takeShare(reading, row["shareMet"] ?? null, name("met"), name("assessed"));
  takeShare(reading, row["lowest"] ?? null, name("met"), name("children"));
  takeShare(reading, row["highest"] ?? null, name("possible"), name("children"));
  takeFigure(reading, row["lower"] ?? null, [name("met"), name("assessed")]);
  takeFigure(reading, row["upper"] ?? null, [name("met"), name("assessed")]);
}

function tieRow({ counts }: Reading, name: (column: string) => string): void {
  const sum = (whole: string, parts: readonly string[]) => counts.adds(name(whole), parts.map(name));
  sum("met", ["hadAtFirstLook", "gained"]);
  sum("without", ["notMet", "lost"]);
  sum("unknown", ["outOfDate", "notAssessed"]);
  sum("assessed", ["met", "without"]);
  sum("children", ["assessed", "unknown"]);
  sum("notYet", ["without", "unknown"]);
  sum("possible", ["met", "unknown"]);
}

/** Bands as the edges of every release of that day cut them. */
function pieces({ all }: Reading, { asOf }: Printed, place: Place): Place[] {
  const edges = [...new Set(all.filter((each) => each.asOf === asOf).flatMap((each) => each.edges))].sort(
    (a, b) => a - b,
  );
  return bandsOf(edges)
    .filter(([from, to]) => from >= place.from && to <= place.to)
    .map(([from, to]) => ({ ...place, from, to }));
}

function allAges(reading: Reading, printed: Printed, group: string, subject: string): void {
  const whole = { group, subject, from: -Infinity, to: Infinity };
  for (const column of COUNTS) {
    const name = nameOf(reading, printed, whole, column);
    const parts = bandsOf(printed.edges).map(([from, to]) => nameOf(reading, printed, { ...whole, from, to }, column));
    reading.counts.adds(name, parts);
    reading.onSecret(name);
  }
  tieRow(reading, (column) => nameOf(reading, printed, whole, column));
}

function areas(reading: Reading, printed: Printed, group: string): void {
  for (const area of new Set(reading.skills.map((skill) => skill.area))) {
    const skills = reading.skills.filter((skill) => skill.area === area);
    for (const [from, to] of [...bandsOf(printed.edges), [-Infinity, Infinity] as const]) {
      const name = (subject: string, column: string) => nameOf(reading, printed, { group, subject, from, to }, column);
      [...BOXES, "children"].forEach((column) =>
        reading.counts.adds(
          name(`all of ${area}`, column),
          skills.map(({ id }) => name(id, column)),
        ),
      );
    }
  }
}

function everybody(reading: Reading, printed: Printed, groups: readonly string[]): void {
  for (const { name: subject } of subjectsOf(reading)) {
    for (const [from, to] of [...bandsOf(printed.edges), [-Infinity, Infinity] as const]) {
      const place = { group: "", subject, from, to };
      for (const column of COUNTS) {
        const whole = nameOf(reading, printed, place, column);
        reading.counts.adds(
          whole,
          groups.map((group) => nameOf(reading, printed, { ...place, group }, column)),
        );
        reading.onSecret(whole);
      }
    }
  }
}

export function bandsOf(edges: readonly number[]): (readonly [from: number, to: number])[] {
  return Array.from(
    { length: edges.length + 1 },
    (_, at) => [edges[at - 1] ?? -Infinity, edges[at] ?? Infinity] as const,
  );
}

export function labelOf(from: number, to: number): string {
  if (from === -Infinity) return `before ${to} months`;
  return to === Infinity ? `${from} months and over` : `${from} to <${to} months`;
}
