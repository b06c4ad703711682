import type { WorkbookIn } from "../../workbook/workbook";
import { blockOf, type Counted, skillColumns, unknownSkillColumns } from "./count-blocks";
import type { WideColumn } from "./block";
import type { FindingCollector } from "../findings/collector";
import type { DecisionsInForce } from "../corrections/in-force";
import { type HeadingMatch, matchHeadings } from "./headings";
import type { KeyLookup } from "../cells/ids";
import { keyOf } from "../cells/words";
import { findRegions } from "./locate";
import type { Region } from "./region";
import { specOf } from "../tables";
import { GRID } from "../tables/observations";
import type { WordMeaning } from "../corrections/settled";
import type { TableName } from "../tables/spec";
import { explainUnfit, placesIn } from "./unfit";

/** The tables of a workbook. Wide sheets are known only once the skills are. */
export interface Found {
  readonly regions: readonly Region[];
  /** The blocks of a table that is not wide. */
  blocks(table: TableName): readonly Counted[];
  isThere(table: TableName): boolean;
  /**
   * What keeps a table that is not there from being read; null where nothing looks like it.
   *
   * @param file - looks in this one of several files alone
   */
  unfit(table: TableName, wide?: ReadonlySet<Region>, file?: string): string | null;
}

export interface WideFound {
  readonly blocks: readonly Counted[];
  /** Regions that are wide sheets, and no table of children beside. */
  readonly regions: ReadonlySet<Region>;
  /** Skill columns of a table of children that is a wide sheet too. */
  readonly inChildren: ReadonlyMap<Region, readonly WideColumn[]>;
}

export function findTables(workbook: WorkbookIn, findings: FindingCollector, decisions: DecisionsInForce): Found {
  const regions = findRegions(workbook, decisions.headings, decisions.sheets);
  for (const region of regions) seeHeadings(region, decisions);
  return {
    regions,
    blocks: (table) => fitting(regions, table).map(({ region, match }) => blockOf(findings, region, table, match)),
    isThere: (table) => fitting(regions, table).length > 0,
    unfit: (table, wide = new Set(), file) =>
      explainUnfit(findings, placesIn(workbook, regions, file), specOf(table), decisions.headings, wide),
  };
}

/** The blocks of Children, less the skill columns of those that are wide sheets too. */
export function childBlocks(findings: FindingCollector, found: Found, wide: WideFound): Counted[] {
  return fitting(found.regions, "Children")
    .filter(({ region }) => !wide.regions.has(region))
    .map(({ region, match }) => {
      const skills = new Set((wide.inChildren.get(region) ?? []).map(({ column }) => column));
      const unmatched = match.unmatched.filter((cell) => !skills.has(cell.column));
      return blockOf(findings, region, "Children", { ...match, unmatched });
    });
}

/** Wide sheets: headings that are skills beside a heading for the child. */
export function findWide(
  findings: FindingCollector,
  found: Found,
  decisions: DecisionsInForce,
  lookup: KeyLookup,
): WideFound {
  const candidates = found.regions.filter(
    (each) => each.settled === null && (each.spec === null || each.spec.name === "Children"),
  );
  const wide = candidates.flatMap((region) => {
    const match = matchHeadings(GRID, region.cells, decisions.headings.get("Observations"));
    const skills = match.columns.has("child") ? skillColumns(match, lookup) : [];
    if (skills.length === 0) return [];
    // Beside the columns of Children a date may be anything; on a sheet of skills alone it is a look.
    const isChildrenToo = region.spec?.name === "Children" && region.match?.missing.length === 0;
    const unknown = isChildrenToo ? [] : unknownSkillColumns(region, match, skills);
    return [{ region, match, skills: [...skills, ...unknown] }];
  });
  const settled = found.regions.flatMap((region) => settledGrid(region, lookup));
  const says = { zero: isSettled(decisions.word("0")), blank: isSettled(decisions.word("")) };
  const hasChildrenApart = fitting(found.regions, "Children").some(
    ({ region }) => !wide.some((each) => each.region === region),
  );
  return {
    blocks: [...wide, ...settled].map(({ region, match, skills }) =>
      blockOf(findings, region, "Observations", match, skills, says),
    ),
    regions: new Set(hasChildrenApart ? wide.map((each) => each.region) : []),
    inChildren: new Map(wide.map((each) => [each.region, each.skills])),
  };
}

function isSettled(means: WordMeaning | null | undefined): boolean {
  return means !== null && means !== undefined && means !== "leave out";
}

/** The skill columns of a sheet that a person said is a grid. */
function settledGrid(region: Region, lookup: KeyLookup) {
  const { settled, match } = region;
  if (settled?.decision.is !== "grid" || !match || match.missing.length > 0) return [];
  const columns = region.cells.flatMap((cell): WideColumn[] => {
    const skill = settled.skills.get(cell.column);
    if (skill === undefined) return [];
    const days = settled.daysOf.get(keyOf(skill));
    const own = { skill: lookup(keyOf(skill), skill), heading: cell.text, column: cell.column };
    return [days === undefined ? own : { ...own, days }];
  });
  const days = new Set(settled.daysOf.values());
  const unmatched = match.unmatched.filter(({ column }) => !days.has(column));
  const skills = [...columns, ...unknownSkillColumns(region, { ...match, unmatched }, columns)];
  return skills.length > 0 ? [{ region, match, skills }] : [];
}

interface Fitting {
  readonly region: Region;
  readonly match: HeadingMatch;
}

function fitting(regions: readonly Region[], table: TableName): Fitting[] {
  return regions.flatMap((region) =>
    region.spec?.name === table && region.match?.missing.length === 0 ? [{ region, match: region.match }] : [],
  );
}

function seeHeadings(region: Region, decisions: DecisionsInForce): void {
  if (region.settled) decisions.see(region.settled.decision);
  const table = region.spec?.name;
  if (!table) return;
  region.cells.forEach((cell) => cell.keys.forEach((key) => decisions.seeHeading(table, key)));
}
