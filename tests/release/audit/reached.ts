import { groupOf, type Printed, type Reading, rowsOf, take, takeShare } from "./outsider";

const COUNTS = ["met", "notMet", "notKnown", "notYet", "possible"];

/** Reads reached-by-age: at each age, from age to age, and groups in everybody. */
export function readReached(reading: Reading, printed: Printed): void {
  const table = printed.tables.find(({ id }) => id === "reached-by-age");
  if (table === undefined) return;
  const rows = rowsOf(table);
  const groups = [...new Set(rows.map((row) => groupOf(row, printed.by)))];
  for (const row of rows) {
    const group = groupOf(row, printed.by);
    const children = childrenName(printed, group);
    const name = (column: string) => nameOf(printed, group, String(row["skill"]), Number(row["age"]), column);
    reading.counts.know(children, 1, Infinity);
    take(reading, children, row["children"] ?? null);
    ["met", "notMet", "notKnown"].forEach((column) => take(reading, name(column), row[column] ?? null));
    ["notYet", "possible"].forEach((column) => reading.onSecret(name(column)));
    takeShare(reading, row["lowest"] ?? null, name("met"), children);
    takeShare(reading, row["highest"] ?? null, name("possible"), children);
  }
  groups.forEach((group) => tieAges(reading, printed, group));
  if (printed.by.length > 0) everybody(reading, printed, groups);
}

export function childrenName({ asOf }: Pick<Printed, "asOf">, group: string): string {
  return ["ever followed", asOf, group, "children"].join("|");
}

function nameOf({ asOf }: Printed, group: string, skill: string, age: number, column: string): string {
  return ["ever followed", asOf, group, skill, age, column].join("|");
}

/** Who has met it by an age has met it by every later one; who was last seen without it late, was not met before. */
function tieAges(reading: Reading, printed: Printed, group: string): void {
  const { counts, onSecret, all, skills } = reading;
  const same = all.filter(
    ({ asOf, by, tables }) =>
      asOf === printed.asOf &&
      (by.join() === printed.by.join() || group === "") &&
      tables.some(({ id }) => id === "reached-by-age"),
  );
  const ages = [...new Set([printed, ...same].flatMap(({ edges }) => edges))].sort((a, b) => a - b);
  for (const { id } of skills) {
    const name = (age: number, column: string) => nameOf(printed, group, id, age, column);
    ages.forEach((age, at) => {
      counts.adds(
        childrenName(printed, group),
        ["met", "notMet", "notKnown"].map((column) => name(age, column)),
      );
      counts.adds(name(age, "notYet"), [name(age, "notMet"), name(age, "notKnown")]);
      counts.adds(name(age, "possible"), [name(age, "met"), name(age, "notKnown")]);
      const next = ages[at + 1];
      if (next === undefined) return;
      const between = (column: string) => `${name(age, column)} until ${next}`;
      counts.within(name(age, "met"), name(next, "met"), between("met"));
      counts.within(name(next, "notMet"), name(age, "notMet"), between("notMet"));
      onSecret(between("met"));
      onSecret(between("notMet"));
    });
  }
}

function everybody(reading: Reading, printed: Printed, groups: readonly string[]): void {
  const total = (whole: string, parts: readonly string[]) => {
    reading.counts.adds(whole, parts);
    reading.onSecret(whole);
  };
  total(
    childrenName(printed, ""),
    groups.map((group) => childrenName(printed, group)),
  );
  for (const { id } of reading.skills) {
    for (const age of printed.edges) {
      for (const column of COUNTS) {
        total(
          nameOf(printed, "", id, age, column),
          groups.map((group) => nameOf(printed, group, id, age, column)),
        );
      }
    }
  }
  tieAges(reading, printed, "");
}
