import { Command, CommanderError, InvalidArgumentError } from "commander";
import { settingsThatBearOn } from "../settings/settings";
import { VERSION } from "../report/version";
import { MOST_VISITS_IN_PLAN, VISITS_IN_PLAN, visitsAsked } from "../tables/caseload/plan-visits";
import { badRequest } from "./failure";
import { BOOKS, listOf, workbookName } from "./option-values";
import type { Request } from "./request";
import { releaseCommand } from "./release-options";
import { earlierSettingOptions, earlierSettingsGiven, settingOptions, settingsGiven } from "./setting-options";

/** Words of the command line to a request; null where they asked for help, which has been printed. Nothing is read. */
export function parseWords(words: readonly string[], print: (text: string) => void): Request | null {
  let request: Request | null = null;
  const program = programFor((found) => (request = found), print);
  try {
    program.parse([...words], { from: "user" });
  } catch (error) {
    if (!(error instanceof CommanderError)) throw error;
    if (error.exitCode === 0 || error.code === "commander.help") return null;
    throw badRequest(`${sentence(error.message)} Run "windowline ${namedCommand(words)}--help" for what it takes.`);
  }
  return request;
}

type Found = (request: Request) => void;

function programFor(found: Found, print: (text: string) => void): Command {
  const program = new Command("windowline")
    .description(
      "Who has met which skill, at which age, against which window: tables and a report from a program's own workbook.\nThe tool never diagnoses: talk with the child's clinician; local rules and licensed practice decide.",
    )
    .version(VERSION)
    .exitOverride()
    .configureOutput({ writeOut: print, writeErr: () => undefined })
    .argument("[command...]")
    .action(([word]: string[]) => {
      if (word !== undefined) throw badRequest(`There is no command "${word}". Run "windowline --help" for the list.`);
      print(program.helpInformation());
    });
  for (const command of [
    reportCommand(found),
    checkCommand(found),
    releaseCommand(found),
    pageCommand(found),
    againCommand(found),
    changedCommand(found),
    firmCommand(found),
    callCommand(found),
    understandCommand(found),
    templateCommand(found),
    sampleCommand(found),
  ]) {
    program.addCommand(command.exitOverride().configureOutput({ writeOut: print, writeErr: () => undefined }));
  }
  return program;
}

function reportCommand(found: Found): Command {
  const command = new Command("report")
    .description("Make the quarterly report: a workbook to read and print, its data as a second workbook, and JSON")
    .argument("<books...>", BOOKS)
    .option(
      "--out <file>",
      "the report workbook (usual: BOOK-report-DATE.xlsx in this folder when --json is left out too)",
      workbookName,
    )
    .option("--data <file>", "the data workbook (usual: REPORT-data.xlsx beside the report)", workbookName)
    .option("--json <file>", "the same report as JSON")
    .option("--tables <ids>", "only these tables, comma-separated", listOf)
    .option("--last <file>", "the last REPORT.json: rows that it had and this workbook has not are said first")
    .option("--understanding <file>", "how the workbook is understood, from windowline understand or the pane (JSON)")
    .option("--decisions <file>", "corrections (JSON)");
  for (const option of settingOptions()) command.addOption(option);
  return command.action((books: string[], options: Record<string, string & readonly string[]>) =>
    found({
      kind: "report",
      last: options.last ?? null,
      books,
      out: options.out ?? null,
      data: options.data ?? null,
      json: options.json ?? null,
      tables: options.tables ?? null,
      understanding: options.understanding ?? null,
      decisions: options.decisions ?? null,
      settings: settingsGiven(options),
    }),
  );
}

function checkCommand(found: Found): Command {
  const command = new Command("check")
    .description(
      "List every finding in the workbook, with its cell and what to do; exit 1 where a person should check something",
    )
    .argument("<books...>", BOOKS)
    .option("--json <file>", "the findings as JSON")
    .option("--understanding <file>", "how the workbook is understood, from windowline understand or the pane (JSON)")
    .option("--decisions <file>", "corrections (JSON)");
  for (const option of settingOptions(settingsThatBearOn("reading"))) command.addOption(option);
  return command.action((books: string[], options: Record<string, string>) =>
    found({
      kind: "check",
      books,
      json: options.json ?? null,
      understanding: options.understanding ?? null,
      decisions: options.decisions ?? null,
      settings: settingsGiven(options),
    }),
  );
}

function pageCommand(found: Found): Command {
  const command = new Command("page")
    .description("Write one internal page to print: of a child for the next visit, or of a therapist's caseload")
    .argument("<books...>", BOOKS)
    .option("--child <id>", "the child whose page it is, for the family to take along")
    .option("--therapist <code>", "the therapist whose caseload it is")
    .option("--visits <count>", "how many visits the plan on a caseload page is for", visitsInPlan, VISITS_IN_PLAN)
    .requiredOption("--out <file>", "the workbook to write, of one sheet", workbookName)
    .option("--understanding <file>", "how the workbook is understood, from windowline understand or the pane (JSON)")
    .option("--decisions <file>", "corrections (JSON)");
  for (const option of settingOptions(settingsThatBearOn("reading", "ages", "met", "boxes"))) command.addOption(option);
  return command.action((books: string[], { visits, ...options }: Record<string, string> & { visits: number }) =>
    found({
      kind: "page",
      books,
      out: options.out as string,
      child: options.child ?? null,
      therapist: options.therapist ?? null,
      visits,
      understanding: options.understanding ?? null,
      decisions: options.decisions ?? null,
      settings: settingsGiven(options),
    }),
  );
}

function understandCommand(found: Found): Command {
  return new Command("understand")
    .description("Show how the sheets, headings and words of a workbook are understood, and what is doubtful")
    .argument("<books...>", BOOKS)
    .option("--out <file>", "the understanding as a file, to be corrected and given with --understanding")
    .option("--understanding <file>", "what was settled before, such as last quarter's: what differs is said")
    .action((books: string[], options: Record<string, string>) =>
      found({ kind: "understand", books, out: options.out ?? null, understanding: options.understanding ?? null }),
    );
}

function templateCommand(found: Found): Command {
  return new Command("template")
    .description("Write an empty workbook with the tables, lists to choose from and a guide")
    .requiredOption("--out <file>", "the workbook to write", workbookName)
    .action(({ out }: { out: string }) => found({ kind: "template", out }));
}

function againCommand(found: Found): Command {
  return new Command("again")
    .description(
      "Make a report again from what it says of itself; exit 0 where it is the same to the byte, 1 where not",
    )
    .argument("<report>", "a report workbook or a REPORT.json that this tool wrote; it is only read")
    .argument("<books...>", BOOKS)
    .option("--understanding <file>", "how the workbook is understood, where the report was made with it (JSON)")
    .option("--decisions <file>", "corrections, where the report was made with them (JSON)")
    .action((report: string, books: string[], options: Record<string, string>) =>
      found({
        kind: "again",
        report,
        books,
        understanding: options.understanding ?? null,
        decisions: options.decisions ?? null,
      }),
    );
}

function changedCommand(found: Found): Command {
  const command = new Command("changed")
    .description("Say why figures are not what they were: what was corrected, what is counted otherwise, what happened")
    .argument(
      "<earlier>",
      "the earlier workbook or a folder of them, or the REPORT.json that was made of it; only read",
    )
    .argument("<later...>", "the later workbook, or several, or a folder; only read")
    .option("--out <file>", "what changed as a workbook to read and print", workbookName)
    .option("--json <file>", "the same as JSON")
    .option("--tables <ids>", "what-changed (usual), what-changed-children (internal), comma-separated", listOf)
    .option("--understanding <file>", "how the workbooks are understood, from windowline understand or the pane (JSON)")
    .option("--decisions <file>", "corrections (JSON)")
    .option("--earlier-understanding <file>", "how the earlier workbook is understood, where that differs")
    .option("--earlier-decisions <file>", "corrections of the earlier workbook, where they differ");
  for (const option of [...settingOptions(), ...earlierSettingOptions()]) command.addOption(option);
  return command.action((earlier: string, books: string[], options: Record<string, string & readonly string[]>) =>
    found({
      kind: "changed",
      earlier,
      books,
      out: options.out ?? null,
      json: options.json ?? null,
      tables: options.tables ?? null,
      understanding: options.understanding ?? null,
      decisions: options.decisions ?? null,
      settings: settingsGiven(options),
      earlierSettings: earlierSettingsGiven(options),
      earlierUnderstanding: options.earlierUnderstanding ?? null,
      earlierDecisions: options.earlierDecisions ?? null,
    }),
  );
}

function firmCommand(found: Found): Command {
  const command = new Command("firm")
    .alias("check-definition")
    .description("How firm one figure is: the same figure under every definition that could be defended")
    .argument("<books...>", BOOKS)
    .requiredOption(
      "--figure <path>",
      'table/skill/age group/column, such as met-by-band/walk-alone/"12 to <18 months"/shareMet',
    )
    .option("--json <file>", "the figure under every choice, as JSON")
    .option("--understanding <file>", "how the workbook is understood, from windowline understand or the pane (JSON)")
    .option("--decisions <file>", "corrections (JSON)");
  const bearings = ["reading", "entry", "period", "ages", "met", "boxes", "groups"] as const;
  for (const option of settingOptions(settingsThatBearOn(...bearings))) command.addOption(option);
  return command.action((books: string[], options: Record<string, string>) =>
    found({
      kind: "firm",
      books,
      figure: options.figure as string,
      json: options.json ?? null,
      understanding: options.understanding ?? null,
      decisions: options.decisions ?? null,
      settings: settingsGiven(options),
    }),
  );
}

function callCommand(found: Found): Command {
  return new Command("call")
    .description(
      "Call one worksheet function: a JSON array of arguments on standard input, the result as JSON on standard output",
    )
    .argument("<function>", "such as COHORT.CORRECTEDAGE")
    .action((name: string) => found({ kind: "call", name }));
}

function sampleCommand(found: Found): Command {
  return new Command("sample")
    .description("Write an invented workbook of the Alder Fork program")
    .option("--children <count>", "how many children", wholeNumber, 240)
    .option("--seed <number>", "the same seed gives the same workbook", wholeNumber, 7)
    .requiredOption("--out <file>", "the workbook to write", workbookName)
    .option("--defects", "plant the usual faults of real spreadsheets", false)
    .option("--truth <file>", "what was planted, as JSON")
    .action((options: { children: number; seed: number; out: string; defects: boolean; truth?: string }) =>
      found({ kind: "sample", ...options, truth: options.truth ?? null }),
    );
}

function wholeNumber(text: string): number {
  if (!/^\d{1,9}$/.test(text)) throw new InvalidArgumentError("Give a whole number.");
  return Number(text);
}

function visitsInPlan(text: string): number {
  const visits = visitsAsked(text);
  if (visits === null) throw new InvalidArgumentError(`Give a whole number from 1 to ${MOST_VISITS_IN_PLAN}.`);
  return visits;
}

function namedCommand(words: readonly string[]): string {
  const known = [
    "report",
    "check",
    "again",
    "changed",
    "release",
    "page",
    "call",
    "understand",
    "template",
    "sample",
    "firm",
  ].find((name) => name === words[0]);
  return known ? `${known} ` : "";
}

function sentence(message: string): string {
  const plain = message.replace(/^error: /, "");
  return `${plain.charAt(0).toUpperCase()}${plain.slice(1)}${/[.!?]$/.test(plain) ? "" : "."}`;
}
