import type { ProtectionSummary } from "../../src/release/prepared";
import { HEADS, type TextFinding } from "../../src/release/text-check/check-text";
import type { SettingName } from "../../src/settings/settings";
import { counted, plural } from "../../src/words/numbers";
import type { LedgerOpened, ReleaseState, Told } from "../state/pane-state";
import type { ReleaseFormat, ReleaseMade, ReleaseRefusal, TriedWay } from "../worker/release/released";
import { MISSING_AS_OF, placeOfSetting } from "./settings";

/** The title of the place: the finding, as a sentence. */
export function releaseTitle({ made, refusal }: Pick<ReleaseState, "made" | "refusal">): string {
  if (refusal) return "This release is not safe, so nothing can be saved";
  if (!made) return "Prepare figures that can leave the program";
  const { counts, heldBack } = made.printed;
  const least = `Prepared under the rule of at least ${made.rule.minimumCell}`;
  if (made.rule.method === "round") return `${least}: all counts are rounded`;
  if (made.rule.method === "ranges") return `${least}: all counts are given as ranges`;
  if (heldBack === 0) return `${least}: no count had to be held back`;
  return `${least}: ${counted(heldBack)} of ${plural(counts, "count is", "counts are")} held back`;
}

export const RELEASE_ABOUT =
  "Tables of counts are protected, tested as a reader from outside would test them, and saved as a file of their own. They are never a sheet beside the children.";

export const OTHER = "other";

/** The usual thresholds in plain words, then any other. CMS cell size policy: 11; ten and five: common practice. */
export const PRESETS: readonly { readonly value: string; readonly label: string }[] = [
  { value: "", label: "11, zero may show (usual)" },
  { value: "10", label: "10, zero may show" },
  { value: "5", label: "5, zero may show" },
  { value: OTHER, label: "Another number" },
];

/** What a threshold does, in plain words. */
export function thresholdInWords(least: number): string {
  if (least <= 1) return "No count is small under this rule: nothing is held back.";
  const small = least === 2 ? "A count of 1 is" : `Counts of 1 to ${least - 1} are`;
  const source = least === 11 ? " This is the cell size policy of CMS." : "";
  return `${small} held back, and whatever would give them away. Zero may show.${source}`;
}

export const NO_TABLES_TO_RELEASE = "No table is chosen: tick at least one.";
export const OLD_RELEASE =
  "A table, a setting, a correction or the release log changed since. Prepare the release again; this one cannot be saved.";

/** Why nothing can be prepared: the first field that stands in another place is named with its message. */
export function releaseFaults(messages: ReadonlyMap<SettingName, string>): string {
  const elsewhere = [...messages].find(([name]) => placeOfSetting(name) === "Quarter" && !HERE_TOO.has(name));
  if (elsewhere) return `A field of Quarter needs checking before anything can be prepared. ${elsewhere[1]}`;
  const [only] = messages.values();
  if (messages.size === 1 && only === MISSING_AS_OF) return "The release needs its day: fill in the as-of date.";
  return "Some fields need checking before anything can be prepared.";
}

/** Fields of Quarter that stand in Release too. */
const HERE_TOO: ReadonlySet<SettingName> = new Set(["asOf", "from", "by", "edges"]);

export const TOLD_OF_RELEASE: Told = { tone: "done", text: "Prepared. Nothing is written until you save it." };

/** How many of the shares asked for are not there. */
export function sharesInWords({ shown, wanted }: ReleaseMade["shares"]): string {
  if (wanted === 0) return "The records have no such figure.";
  if (shown === wanted) return wanted === 1 ? "The figure is shown." : `All ${counted(wanted)} figures are shown.`;
  return `${counted(wanted - shown)} of ${plural(wanted, "figure is", "figures are")} held back.`;
}

export const TRY_ABOUT =
  "Longer periods, fewer age groups and no groups are tried one by one, each as a whole release. It may take a few minutes, and you can cancel it.";

export function toldOfTries(ways: readonly TriedWay[]): Told {
  const better = ways.filter(({ showsMore }) => showsMore).length;
  const tried = plural(ways.length, "way was", "ways were");
  if (better === 0) return { tone: "done", text: `${tried} tried: none shows more.` };
  return { tone: "done", text: `${tried} tried: ${better === 1 ? "one shows" : `${better} show`} more.` };
}

export const TOLD_OF_REFUSAL: Told = { tone: "stopped", text: "This release is not safe. Nothing was written." };

/** How many figures are not shown as they are, and why. */
export function heldBackInWords({
  rule,
  protection,
  printed,
}: Pick<ReleaseMade, "rule" | "protection" | "printed">): string {
  const all = `${counted(printed.counts)} counts`;
  if (rule.method === "round") {
    return `All ${all} are rounded to multiples of ${rule.base ?? rule.minimumCell}, and still add up.`;
  }
  if (rule.method === "ranges") return `All ${all} are given as ranges.`;
  if (printed.heldBack === 0) return `Of ${all}, none had to be held back.`;
  const { hidden, small } = protection;
  const held = `Of ${all} in the tables, ${counted(printed.heldBack)} ${printed.heldBack === 1 ? "is" : "are"} held back`;
  return `${held}; the same count may be in several rows. Behind them are ${plural(hidden, "different count", "different counts")}: ${counted(small)} small, ${counted(hidden - small)} from which a small one could be worked out. How many are small is for you; no file says it.`;
}

/** What it costs, and how far from the least possible; null where nothing is chosen. */
export function lossInWords({ rule, protection }: Pick<ReleaseMade, "rule" | "protection">): string | null {
  if (rule.method !== "hide" || protection.loss === 0) return null;
  const { loss, bound, stoppedEarly } = protection;
  const weight = `What is lost weighs ${counted(Math.round(loss))}, where children and totals weigh more than a single box`;
  const stopped = stoppedEarly ? " The search ended at its limit with the best found." : "";
  if (loss <= bound) return `${weight}. No other choice loses less.${stopped}`;
  return `${weight}. No choice can lose less than ${counted(Math.round(bound))}: this one is within ${gap(protection)} of the best there can be.${stopped}`;
}

function gap({ loss, bound }: ProtectionSummary): string {
  return `${((100 * (loss - bound)) / loss).toFixed(1)}%`;
}

export function attackInWords({ rule, attack: { attacked, witnesses } }: Pick<ReleaseMade, "rule" | "attack">): string {
  if (attacked === 0) return "No count of these tables is small, so a reader from outside can prove none to be small.";
  const each = attacked === 1 ? "For it" : "For each";
  return `Nothing small. ${plural(attacked, "small count was", "small counts were")} tested against a reader from outside who knows every figure shown, the rule, and that counts are whole. ${each} there is another table that agrees with everything shown and has zero, or at least ${rule.minimumCell}, in its place: ${plural(witnesses, "such table", "such tables")}, checked by addition alone.`;
}

export function earlierInWords(earlier: number | null): string {
  if (earlier === null) {
    return "Not protected against earlier releases: no release log was opened. Save one with this release, so that the next release is protected against it.";
  }
  if (earlier === 0) return "The release log has no earlier release.";
  return `Protected against ${plural(earlier, "earlier release", "earlier releases")} of the release log, all together.`;
}

export const NOTHING_UNCOVERED =
  "Every earlier release in the release log was taken into account. Figures that were passed on in other ways are not known here.";

export function ledgerInWords({ fileName, releases, last }: LedgerOpened): string {
  if (releases === 0) return `${fileName}: no release yet.`;
  return `${fileName}: ${plural(releases, "earlier release", "earlier releases")}, the last as of ${last ?? ""}. Every hash agrees.`;
}

export const LEDGER_ABOUT =
  "The release log lists earlier releases, so that all together give nothing away. It is read here and sent nowhere.";

/** What the one symbol says. */
export const HELD_BACK = "held back";
export const SYMBOL_ABOUT =
  "* marks every figure that is held back: some are small, others would give a small one away. The release does not say which.";

export function moreRows(hidden: number): string {
  return `Show more: ${plural(hidden, "row", "rows")} not shown yet`;
}

export function moreSentences(hidden: number): string {
  return `Show more: ${plural(hidden, "sentence", "sentences")} not shown yet`;
}

export function refusedInWords({ places }: ReleaseRefusal): string {
  return places.length === 0
    ? "What is shown would give a small count away."
    : `What is shown would give ${plural(places.length, "small count", "small counts")} away, whatever else is held back.`;
}

export const FORMATS: Readonly<Record<ReleaseFormat, { readonly ending: string; readonly mimeType: string }>> = {
  xlsx: { ending: ".xlsx", mimeType: "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet" },
  csv: { ending: "-csv.zip", mimeType: "application/zip" },
  svg: { ending: "-pictures.zip", mimeType: "application/zip" },
};

export const SAVE_ABOUT =
  "A workbook of values only: no formula, link, name, hidden sheet, comment or author. Each file is opened again and searched before it is saved.";

export const OPENING_WARNING =
  "Opened as a new workbook it is not saved yet, and Excel writes its user’s name into it on saving. Take that out before it goes anywhere: File, Info, Check for Issues, Inspect Document.";

export const IN_EXCEL_ABOUT = "Where this Excel lets no add-in save a file, open it as a new workbook.";

export const LEDGER_TO_SAVE =
  "Save the release log too, in place of the earlier one. Without it no later release can be protected against this one. It has no hidden value.";

export function toldOfLedger(fileName: string): Told {
  return {
    tone: "done",
    text: `Saved as ${fileName}. Keep it with the records, and open it here before the next release.`,
  };
}

/** `Take out, sentence 2, “7”`. */
export function proseHead({ kind, sentence, written }: TextFinding): string {
  return [
    HEADS[kind],
    ...(sentence === null ? [] : [`sentence ${sentence}`]),
    ...(written === "" ? [] : [`“${written}”`]),
  ].join(", ");
}

export function toldOfProse(findings: readonly TextFinding[]): Told {
  if (findings.length === 0) return { tone: "done", text: "Checked: the text has no figures." };
  const leaks = findings.filter(({ kind }) => kind === "leak").length;
  const asks = findings.filter(({ kind }) => kind === "mend").length;
  if (leaks > 0) {
    const gives = plural(leaks, "place points", "places point");
    return {
      tone: "done",
      text: `Checked: ${gives} at a child or give away what is held back. Take them out before the text leaves.`,
    };
  }
  if (asks > 0) return { tone: "done", text: `Checked: ${plural(asks, "place needs", "places need")} correcting.` };
  return { tone: "done", text: "Checked: every figure agrees with the release." };
}

/** `3 figures agree with the release`. */
export function agreesInWords(count: number): string {
  return `${plural(count, "figure agrees", "figures agree")} with the release`;
}

export const LONGEST_PROSE = 200_000;
export const PROSE_TOO_LONG: Told = {
  tone: "stopped",
  text: "The text is longer than 200,000 characters, the most that is checked: check it in parts.",
};

export function capitalised(message: string): string {
  return `${message.charAt(0).toUpperCase()}${message.slice(1)}`;
}
