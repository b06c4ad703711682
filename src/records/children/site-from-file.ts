import type { FindingCollector } from "../findings/collector";
import type { Counted } from "../headings/count-blocks";
import { TABLES } from "../tables";
import { displayOf, headingKey } from "../cells/words";

/**
 * Children of several files that no column tells the site of: the name of the file is the site, and a note says so. Names
 * that differ in numbers alone, such as those of years, are of no site.
 */
export function withSites(findings: FindingCollector, children: readonly Counted[]): Counted[] {
  const files = [...new Set(children.flatMap(({ block }) => block.file ?? []))];
  const untold = children.filter(({ block }) => !block.columns.has("site") && !block.constants.has("site"));
  const names = new Map(files.map((file) => [file, siteNamed(file)]));
  const words = new Set([...names.values()].map((name) => headingKey(name.replace(/\bq[1-4]\b|\d+/gi, " "))));
  if (files.length < 2 || words.size < files.length || words.has("")) return [...children];
  return children.map((each) => {
    const name = names.get(each.block.file ?? "");
    if (!untold.includes(each) || name === undefined) return each;
    const { range, firstRow } = each.block;
    findings.range("site-from-file", each.block, { ...range, bottom: firstRow - 1 });
    return {
      ...each,
      block: { ...each.block, constants: new Map([...each.block.constants, ["site", name]]), siteFromFile: true },
    };
  });
}

/** `North` from `out/North.xlsx` or `children-North.csv`. */
function siteNamed(file: string): string {
  const base = file.slice(file.lastIndexOf("/") + 1).replace(/\.[a-z0-9]+$/i, "");
  const table = TABLES.flatMap(({ name, synonyms }) => [name, ...synonyms]).find((name) =>
    base.toLowerCase().startsWith(`${name.toLowerCase()}-`),
  );
  return displayOf(table === undefined ? base : base.slice(table.length + 1));
}
