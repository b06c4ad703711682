import { strFromU8 } from "fflate";
import type { Source } from "../records/fingerprint";
import type { Records } from "../records/records";
import type { PreparedRelease } from "../release/prepared";
import { checkText, textLines } from "../release/text-check/check-text";
import { compareWithEarlier, comparisonLines } from "../release/words/compare-earlier";
import { type EarlierReport, parseEarlier } from "../release/words/earlier-report";
import { saidIn } from "../release/words/sentences";
import type { WordsContext } from "../release/words/words-context";
import type { OutputRules } from "../report/release/release-rules";
import { runReport } from "../report/run";
import { echoSettings, type Settings } from "../settings/settings";
import { badRequest } from "./failure";
import { readBytes } from "./files";
import { reportOrFail } from "./open";
import type { RequestOf } from "./request";
import { progress } from "./say";

/** What stands beside a release on the terminal and in none of its files. */
export interface Beside {
  readonly prose: string | null;
  readonly earlier: EarlierReport | null;
}

/** Reads both files before anything is made, so that a bad one costs nothing. */
export function besideFrom({ prose, earlier }: RequestOf<"release">): Beside {
  return {
    prose: prose === null ? null : proseFrom(prose),
    earlier: earlier === null ? null : earlierFrom(earlier),
  };
}

const LONGEST_PROSE = 200_000;

function proseFrom(file: string): string {
  const text = strFromU8(readBytes(file)).replace(/^\uFEFF/, "");
  if (text.length <= LONGEST_PROSE) return text;
  throw badRequest(
    `${file} is longer than 200,000 characters, the most that is checked: split it. Nothing was written.`,
  );
}

export interface Made {
  readonly release: PreparedRelease;
  readonly context: WordsContext;
  readonly rules: OutputRules;
  readonly settings: Settings;
  readonly records: Records;
  readonly source: Source;
}

export function besideLines({ prose, earlier }: Beside, made: Made): string[] {
  return [
    ...(earlier === null ? [] : earlierLines(earlier, made)),
    ...(prose === null ? [] : ["", "The text, checked against the release:", ...checkedLines(prose, made)]),
  ];
}

function earlierFrom(file: string): EarlierReport {
  const read = parseEarlier(strFromU8(readBytes(file)));
  if ("message" in read) throw badRequest(`${file}: ${read.message}`);
  return read.earlier;
}

function earlierLines(earlier: EarlierReport, { release, context, settings }: Made): string[] {
  const echo = { ...echoSettings(settings) } as EarlierReport["settings"];
  const compared = compareWithEarlier(release.tables, context, echo, earlier);
  return ["", EARLIER, ...compared.flatMap(comparisonLines)];
}

const EARLIER =
  "Beside the earlier report (for you: an earlier report is not protected, and its figures may leave only in a release of their own):";

/** The true tables are made for this alone: what is held back is known nowhere else. */
function checkedLines(prose: string, { release, context, rules, settings, records, source }: Made): string[] {
  progress("Checking the text against the release");
  const ids = release.tables.map(({ id }) => id);
  const { tables } = reportOrFail(runReport(records, { settings, tables: ids, source }));
  const inside = { truth: tables, skills: context.skills, names: rules.names, said: saidIn(release, context) };
  const findings = checkText(prose, release, inside);
  return findings.length === 0 ? ["The text has no figures."] : textLines(findings);
}
