import { type Answer, showsMore, triedInWords } from "../release/answers/answer";
import { questionOfTable } from "../release/answers/questions";
import { headOf, type Ledger } from "../release/ledger";
import type { PreparedRelease, Refusal } from "../release/prepared";
import type { ReleasedTable } from "../release/release-table";
import { isoInWords } from "../release/words/days";
import { DECISION, ruleInWords } from "../release/words/rule-words";
import type { WordsContext } from "../release/words/words-context";
import type { Passage } from "../report/release/read-me";
import { countsPrinted } from "../report/release/counts-printed";
import { counted, plural } from "../words/numbers";

/** What became of a release, for whoever makes it; how many counts are small stays inside the program. */
export function releaseSummary(
  release: PreparedRelease,
  files: readonly string[],
  ledger: LedgerUse | null,
  more: readonly string[],
): string {
  const { asOf, from, rule, tables, flags, notCovered } = release;
  return [
    `Release as of ${isoInWords(asOf)}, period ${isoInWords(from)} to ${isoInWords(asOf)}. ${ruleInWords(rule)}`,
    ...tables.map(({ id, rows }) => `${id}: ${plural(rows.length, "row", "rows")}.`),
    ...protectionLines(release),
    ...more,
    ...listLines("All or none of a group (for you; in no file; --whole-groups hide holds them back):", flags),
    ...listLines("Not covered:", notCovered),
    ...(ledger === null ? [NO_LEDGER] : ledgerLines(ledger)),
    ...writtenLines(files),
    DECISION,
  ].join("\n");
}

/** Each question, its figures with their counts and the footnote that goes with them; then all that was tried. */
export function answerLines({ tried, release }: Answer, passages: readonly Passage[]): string[] {
  const answers = passages.flatMap(({ heading, lines }) => [heading, ...lines.map((line) => `  ${line}`), ""]);
  return [...answers, ...triedLines(tried, release.rule.minimumCell), ""];
}

/** All that was tried, each with what it shows. */
function triedLines(tried: Answer["tried"], minimumCell: number): string[] {
  return listLines(
    "Tried:",
    tried.map((each) => triedInWords(each, minimumCell, true)),
  );
}

/** What shows more of the tables than what was asked for, each seen to do so. */
export function moreLines({ tried }: Answer, minimumCell: number): string[] {
  const [asked, ...others] = tried;
  const better = others.filter((each) => asked && showsMore(each, asked));
  if (asked === undefined || others.length === 0) return [];
  const lines = better.map((each) => triedInWords(each, minimumCell, true));
  const now = triedInWords(asked, minimumCell);
  return listLines(
    "To show more (tried, each a whole release):",
    lines.length === 0 ? [now, NOTHING_MORE] : [now, ...lines],
  );
}

const NOTHING_MORE = "Longer periods, fewer age groups and no groups were tried: none shows more.";

/** How many shares are held back, and how to see what would show them. */
export function heldBackLines(tables: readonly ReleasedTable[], context: WordsContext): string[] {
  return tables.flatMap((table) => {
    const figures = questionOfTable(table.id).figures(table, context);
    const held = figures.filter(({ sentence }) => sentence === null).length;
    if (held === 0) return [];
    return [
      `${table.id}: ${counted(held)} of ${plural(figures.length, "share is", "shares are")} held back. Add --try: it tries what would show more.`,
    ];
  });
}

export interface LedgerUse {
  readonly file: string;
  readonly before: Ledger;
  readonly after: Ledger;
}

/** A refusal in one sentence: how many places, the first of them, without a count, and the cheapest repair. */
export function refusalText({ places, proposals }: Refusal): string {
  const [first, ...others] = places;
  const rest = others.length === 0 ? "" : ` and ${plural(others.length, "other place", "other places")}`;
  return [
    "This release is not safe, so nothing was written.",
    ...(first === undefined ? [] : [`A small count could be worked out at ${first.place}${rest}.`]),
    ...new Set([...places.map(({ repair }) => repair), ...proposals]),
  ].join(" ");
}

const NO_LEDGER =
  "No release log was named: this release is not protected against earlier ones, and no later one can be protected against it. Add --ledger LEDGER.json.";

function protectionLines({ rule, tables, protection, attack }: PreparedRelease): string[] {
  const { counts, heldBack } = countsPrinted(tables);
  const small = counted(protection.small);
  const said = {
    hide: `Counts: ${counted(counts)}; ${counted(counts - heldBack)} shown as they are, ${counted(heldBack)} held back (${small} of them small).`,
    ranges: `Counts: ${counted(counts)}, all given as ranges.`,
    round: `Counts: ${counted(counts)}, all rounded.`,
  };
  return [
    said[rule.method],
    ...(rule.method === "hide" ? [lossLine(protection)] : []),
    `Tested as a reader from outside: ${plural(attack.attacked, "small count", "small counts")}, ${plural(attack.witnesses, "witness table", "witness tables")} found: none can be proved small.`,
  ];
}

function lossLine({ loss, bound, stoppedEarly }: PreparedRelease["protection"]): string {
  const gap =
    loss <= bound
      ? "no pattern loses less"
      : `no pattern can lose less than ${rounded(bound)}, a gap of ${gapOf(loss, bound)}`;
  return `Loss: ${rounded(loss)}; ${gap}${stoppedEarly ? "; the search was stopped at its limit" : ""}.`;
}

function rounded(loss: number): string {
  return counted(Math.round(loss));
}

function gapOf(loss: number, bound: number): string {
  return `${((100 * (loss - bound)) / loss).toFixed(1)}%`;
}

export function listLines(heading: string, lines: readonly string[]): string[] {
  const more = lines.length - MOST_LINES;
  const shown = lines.slice(0, MOST_LINES).concat(more > 0 ? [`and ${counted(more)} more.`] : []);
  return lines.length === 0 ? [] : [heading, ...shown.map((line) => `  ${line}`)];
}

const MOST_LINES = 20;

/** Many pictures are one line. */
function writtenLines(files: readonly string[]): string[] {
  const pictures = files.filter((file) => /\.(svg|png)$/.test(file));
  if (pictures.length <= MOST_LINES) return files.map((file) => `Written: ${file}`);
  const others = files.filter((file) => !pictures.includes(file));
  return [
    ...others.map((file) => `Written: ${file}`),
    `Written: ${counted(pictures.length)} pictures, from ${pictures[0] ?? ""} to ${pictures.at(-1) ?? ""}`,
  ];
}

function ledgerLines({ file, before, after }: LedgerUse): string[] {
  const [had, has] = [before.entries.length, after.entries.length];
  const begun = had === 0 ? " It was begun with this release." : "";
  const same = had === has ? " This same release stood there already." : "";
  return [
    `Release log: ${file}, ${plural(has, "release", "releases")}.${begun}${same}`,
    `Last hash: ${headOf(after) ?? ""}. Keep it elsewhere to notice a release log cut short.`,
  ];
}
