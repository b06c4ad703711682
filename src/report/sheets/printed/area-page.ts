import type { Skill } from "../../../records/records";
import type { Table } from "../../../tables/table";
import { capital, counted, plural, shareOf } from "../../../words/numbers";
import { CAUTION } from "../../../words/cautions";
import type { CellOut, ShadeStep, SheetOut } from "../../../workbook/sheets";
import { type AgeFigure, agePicture } from "../../answer/age-picture";
import { tableOf } from "../../answer/finding";
import type { Report } from "../../report";
import { columnPoints } from "../../../workbook/paper";
import { readTable } from "../read-table";
import { settingDay } from "../setting-day";
import { widthInDigits } from "../text-width";
import { bandCell, isBandPast, LEAST_SHADED, type SkillLine, skillLines } from "./area-cells";
import { PrintedPage } from "./printed-page";

/** More age groups, or more skills, go on to a page of their own. */
const MOST_BANDS = 8;
const MOST_SKILLS = 17;
const CHART_POINTS = 190;
const LEAST_CHART_POINTS = 84;
const MOST_CHARTS = 3;

export interface TitledSheet {
  readonly sheet: SheetOut;
  readonly about: string;
}

/** One page per area: skills down, age groups across, and beside each skill its window and the ages when it was met. */
export function areaPages(report: Report): TitledSheet[] {
  const table = tableOf(report, "met-by-band");
  if (!table) return [];
  const areas = [...new Set(report.print.skills.map(({ area }) => area))];
  return areas.flatMap((area) => pagesOf(area, table, report));
}

function pagesOf(area: string, table: Table, report: Report): TitledSheet[] {
  const read = readTable(table);
  const skills = report.print.skills.filter((skill) => skill.area === area);
  const bands = [...new Set(table.rows.map((row) => read.text(row, "band")))].sort(byAge);
  const all = skillLines(table, skills, bands);
  const parts = chunks(bands, mostBands(all)).flatMap((some) =>
    chunks(all, MOST_SKILLS).map((lines) => ({ bands: some, lines })),
  );
  const about = titleOf(area, all);
  return parts.map((part, at) => {
    const again = at === 0 ? "" : ` (${at + 1})`;
    return {
      sheet: page(
        { ...part, name: `${capital(area)}${again}`, title: at === 0 ? about : `${about}, continued` },
        report,
      ),
      about: at === 0 ? about : `${about}, continued`,
    };
  });
}

function titleOf(area: string, lines: readonly SkillLine[]): string {
  const sum = (of: (line: SkillLine) => number) => lines.reduce((total, line) => total + of(line), 0);
  const met = sum(({ bands }) => bands.reduce((total, band) => total + band.met, 0));
  const checked = sum(({ upToDate }) => upToDate);
  if (checked === 0) return `${capital(area)}: no up-to-date skill check`;
  const share = shareOf(met, checked);
  const percent = share.includes("(") ? ` ${share.slice(share.indexOf("("))}` : "";
  return `${capital(area)}: of ${counted(checked)} up-to-date skill checks, ${counted(met)}${percent} were met`;
}

interface AreaPart {
  readonly name: string;
  readonly title: string;
  readonly bands: readonly string[];
  readonly lines: readonly SkillLine[];
}

const LEAD = [11, 6, 6, 6];
const LAST = [10, 8];
const SKILL = { usual: 28.5, crowded: 20 };
/** Characters of a column for so many digits of a cell's bold print, and of the narrowest one. */
const CELL_DIGITS = 0.98;
const CELL_PADDING = 0.6;
const NARROWEST = 6.9;
/** Points of the page's columns in Excel: LibreOffice makes them 6% wider, and then shrinks the page by 4% at most. */
const WIDEST_POINTS = 715;

function page({ name, title, bands, lines }: AreaPart, report: Report): SheetOut {
  const widths = [skillWidth(bands.length), ...LEAD, ...bands.map(() => bandWidth(lines)), ...LAST];
  const drawn = new PrintedPage(name, widths, true);
  drawn.text(title, "title");
  drawn.text(subtitle(report), "subtitle");
  headings(drawn, bands);
  const ages = agesOf(report);
  for (const line of lines) drawn.row(skillRow(line, bands, ages));
  drawn.space(5);
  legend(drawn, bands.length);
  for (const note of notes(report, lines)) drawn.text(note, "small");
  charts(drawn, lines, ages, report);
  drawn.text(CAUTION, "small");
  return drawn.finished(report);
}

function skillWidth(bandCount: number): number {
  return bandCount < MOST_BANDS ? SKILL.usual : SKILL.crowded;
}

/** Wide enough for the longest cell. */
function bandWidth(lines: readonly SkillLine[]): number {
  const cells = lines.flatMap(({ bands }) => bands.map(({ met, upToDate }) => `${met} of ${upToDate}`));
  const longest = Math.max(0, ...cells.map(widthInDigits));
  return Math.max(NARROWEST, longest * CELL_DIGITS + CELL_PADDING);
}

function mostBands(lines: readonly SkillLine[]): number {
  const others = [SKILL.crowded, ...LEAD, ...LAST].reduce((sum, width) => sum + columnPoints(width), 0);
  return Math.max(1, Math.min(MOST_BANDS, Math.floor((WIDEST_POINTS - others) / columnPoints(bandWidth(lines)))));
}

function subtitle({ print, settings }: Report): string {
  const day = settingDay(settings, "asOf") ?? "the last day of the period";
  return `${plural(print.followed, "child", "children")} in the program on ${day}, by age group. Each cell: met, of those with an up-to-date check.`;
}

function headings(page: PrintedPage, bands: readonly string[]): void {
  const left = (value: string): CellOut => ({ value, style: "cellHeading" });
  const middle = (value: string): CellOut => ({ value, style: "cellHeadingMiddle" });
  page.row([
    left("Skill"),
    middle("Expected window, months"),
    middle("Half by"),
    middle("3 in 4 by"),
    middle("9 in 10 by"),
    ...bands.map((band) => middle(shortBand(band))),
    middle("Up-to-date checks"),
    middle("Not known"),
  ]);
}

/** `6 to <9 months` as `6 to 8`, in whole months of age. */
export function shortBand(band: string): string {
  const found = /^(\d+) to <(\d+) months$/.exec(band);
  if (!found) return band.replace("before 0 months", "before due date").replace(" months and over", " and over");
  return `${found[1]} to ${Number(found[2]) - 1} months`;
}

function skillRow(line: SkillLine, bands: readonly string[], ages: ReadonlyMap<string, Ages>): CellOut[] {
  const { skill } = line;
  const own = ages.get(skill.id);
  const months = (value: number | null | undefined): CellOut => ({
    value: value === null || value === undefined ? "–" : value.toFixed(1),
    style: "cellMiddle",
  });
  return [
    { value: skill.label, style: "cell" },
    { value: shortWindow(skill), style: "cellMiddle" },
    months(own?.half),
    months(own?.threeQuarters),
    months(own?.nineInTen),
    ...line.bands
      .filter(({ band }) => bands.includes(band))
      .map((band) => bandCell(band, isBandPast(band.band, skill))),
    { value: `${counted(line.upToDate)} of ${counted(line.children)}`, style: "cellMiddle" },
    { value: counted(line.needsRecheck + line.notChecked), style: "cellMiddle" },
  ];
}

/** `8.2 to 17.6`, `by 15.0`, with a star where no source was published. */
function shortWindow({ opensMonths, closesMonths, expectedShare }: Skill): string {
  if (closesMonths === null) return "none";
  const close = closesMonths.toFixed(1);
  const said = opensMonths === null ? `by ${close}` : `${opensMonths.toFixed(1)} to ${close}`;
  return expectedShare === null ? `${said} *` : said;
}

interface Ages {
  readonly half: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
  readonly threeQuarters: number | null;
  readonly nineInTen: number | null;
  readonly met: number;
}

/** Of all children together; with groups there is one age per group, and those are in the data workbook. */
function agesOf(report: Report): ReadonlyMap<string, Ages> {
  const table = tableOf(report, "age-when-met");
  if (!table) return new Map();
  const read = readTable(table);
  if (read.groupColumns.length > 0) return new Map();
  return new Map(
    table.rows.map((row) => [
      read.text(row, "skill"),
      {
        half: read.number(row, "p50"),
        lower: read.number(row, "p50Lower"),
        upper: read.number(row, "p50Upper"),
        threeQuarters: read.number(row, "p75"),
        nineInTen: read.number(row, "p90"),
        met: read.number(row, "interval") ?? 0,
      },
    ]),
  );
}

const LEGEND = ["under 50%", "50–74%", "75–89%", "90% up"] as const;

/** Below the age groups, as wide as they. */
function legend(page: PrintedPage, bandCount: number): void {
  if (bandCount < LEGEND.length) return page.text(`Shades, by share met: ${LEGEND.join(", ")}.`, "small");
  const first = LEAD.length + 1;
  const each = Math.floor(bandCount / LEGEND.length);
  page.spannedRow(
    [
      { value: "Shades, by share met:", style: "small" },
      ...LEGEND.map((value, step): CellOut => ({ value, style: `step${step as ShadeStep}` })),
    ],
    [
      { from: 0, to: first - 1 },
      ...LEGEND.map((_, at) => ({ from: first + at * each, to: first + (at + 1) * each - 1 })),
    ],
  );
}

function notes(report: Report, lines: readonly SkillLine[]): string[] {
  const grouped = (tableOf(report, "met-by-band")?.columns[0]?.key ?? "skill") !== "skill";
  const noSource = lines.some(({ skill }) => skill.expectedShare === null && skill.closesMonths !== null);
  return [
    `Bold: the whole age group is past the expected window. No shade: fewer than ${LEAST_SHADED} checked. –: nobody checked, or no estimate. Not known: needs a recheck, or was never checked.${noSource ? " *: common practice, no published source." : ""}`,
    `Half, 3 in 4, 9 in 10 by: the estimated age in months at which so many of the children ever in the program had met the skill.${grouped ? " With groups these ages are in the data workbook." : ""}`,
  ];
}

/** Where the page has room: the skills that most children met between two checks. */
function charts(page: PrintedPage, lines: readonly SkillLine[], ages: ReadonlyMap<string, Ages>, report: Report): void {
  const curves = new Map(report.print.curves.map((curve) => [curve.skill, curve]));
  const figures = lines
    .flatMap(({ skill }): (AgeFigure & { readonly met: number })[] => {
      const own = ages.get(skill.id);
      const curve = curves.get(skill.id);
      if (!own || own.half === null || !curve) return [];
      return [{ skill, curve, half: own.half, lower: own.lower, upper: own.upper, met: own.met }];
    })
    .sort((a, b) => b.met - a.met)
    .slice(0, MOST_CHARTS)
    .sort((a, b) => (a.skill.closesMonths ?? 0) - (b.skill.closesMonths ?? 0));
  const room = page.roomLeft - BELOW_CHARTS_POINTS;
  if (figures.length === 0 || room < LEAST_CHART_POINTS) return;
  page.text(CHARTS_SAY, "small");
  page.chartRow(figures.map(agePicture), Math.min(room - 14, CHART_POINTS));
}

const BELOW_CHARTS_POINTS = 30;
const CHARTS_SAY =
  "Age when children met a skill. Line: share who met it by each age. Hatched, or dotted line: expected window, or its close. Diamond and dashes: half of the children, with the likely range.";

function byAge(a: string, b: string): number {
  const from = (band: string) => Number(/^\d+/.exec(band)?.[0] ?? -1);
  return from(a) - from(b);
}

function chunks<T>(all: readonly T[], most: number): T[][] {
  const count = Math.max(1, Math.ceil(all.length / most));
  const size = Math.ceil(all.length / count);
  return Array.from({ length: count }, (_, at) => all.slice(at * size, (at + 1) * size));
}
