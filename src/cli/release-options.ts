import { Command, InvalidArgumentError } from "commander";
import { QUESTION_IDS } from "../release/answers/questions";
import { SETTING_NAMES } from "../settings/settings";
import { badRequest } from "./failure";
import { BOOKS, listOf, workbookName } from "./option-values";
import type { Request } from "./request";
import { settingOptions, settingsGiven } from "./setting-options";

/** The words of `windowline release`. */
export function releaseCommand(found: (request: Request) => void): Command {
  const command = new Command("release")
    .description(
      "Prepare figures that can leave the program: protected, tested as a reader from outside would test them, with their words.\nWhether they may leave is for people to decide: 45 CFR 164.514 and 34 CFR 99.31(b).",
    )
    .argument("<books...>", BOOKS)
    .option("--tables <ids>", "the tables to release, comma-separated, such as met-by-band,trend", listOf)
    .option(
      "--answer <questions>",
      `in place of --tables: one or more of ${QUESTION_IDS.join(", ")}, comma-separated; longer periods, fewer age groups and no groups are tried until their figures show`,
      listOf,
    )
    .option(
      "--try",
      "with --tables: try what would show more of them, and say it; each try takes as long as the release",
    )
    .requiredOption("--out <file>", "the workbook to write, of values only; other formats take its name", workbookName)
    .option("--format <formats>", "xlsx, csv, svg, png, comma-separated (usual: xlsx)", listOf)
    .option("--ledger <file>", "what was released before, to be protected against; begun where it is not there yet")
    .option(
      "--plan",
      "with --ledger: say what was released before, what this release can no longer show because of it, and what later ones cannot show because of this one; nothing is written",
    )
    .option("--preset <least>", "a usual rule: 11 (CMS), 10 or 5; zero may show in each", preset)
    .option(
      "--prose <file>",
      "a text that is to go with the figures: its numbers, names and dates are checked against them",
    )
    .option("--skills <ids>", "the skills that pictures show, comma-separated (usual: whole areas)", listOf)
    .option("--earlier <file>", "an earlier REPORT.json: the same figures, where the definition is the same")
    .option("--understanding <file>", "how the workbook is understood, from windowline understand or the pane (JSON)")
    .option("--decisions <file>", "corrections (JSON)");
  for (const option of settingOptions(SETTING_NAMES)) command.addOption(option);
  return command.action((books: string[], options: Record<string, string & readonly string[]>) => {
    if (options.plan !== undefined && options.ledger === undefined) throw badRequest(PLAN_NEEDS_LOG);
    if ((options.tables === undefined) === (options.answer === undefined)) throw badRequest(ONE_OF_TWO);
    found({
      kind: "release",
      books,
      out: options.out as string,
      tables: options.tables ?? null,
      answer: options.answer ?? null,
      tries: options.try !== undefined,
      plan: options.plan !== undefined,
      formats: options.format ?? ["xlsx"],
      ledger: options.ledger ?? null,
      prose: options.prose ?? null,
      skills: options.skills ?? null,
      earlier: options.earlier ?? null,
      understanding: options.understanding ?? null,
      decisions: options.decisions ?? null,
      settings: { ...settingsGiven(options), ...presetSettings(options) },
    });
  });
}

const ONE_OF_TWO =
  "Give either --tables, such as --tables met-by-band, or --answer with a question, such as --answer plans-in-time. Nothing was written.";

const PLAN_NEEDS_LOG = "--plan reads the release log: add --ledger LEDGER.json. Nothing was written.";

/** CMS cell size policy: 11. Ten and five: common practice of state agencies and schools, no one source. */
const PRESETS: readonly string[] = ["11", "10", "5"];

function preset(text: string): string {
  if (!PRESETS.includes(text)) throw new InvalidArgumentError(`The presets are ${PRESETS.join(", ")}.`);
  return text;
}

function presetSettings({ preset: chosen, minimumCell }: Readonly<Record<string, string>>): Record<string, string> {
  if (chosen === undefined) return {};
  if (minimumCell !== undefined && minimumCell !== chosen) {
    throw badRequest("Give either --preset or --minimum-cell: they name different thresholds. Nothing was written.");
  }
  return { minimumCell: chosen };
}
