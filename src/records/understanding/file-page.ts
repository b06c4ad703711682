import { LEAVE_OUT, ROW_TITLE, SHEET_DAY, SHEET_KINDS, SHEET_NAME, WORD_MEANINGS } from "../corrections/settled";
import { AREAS } from "../records";
import { headingOptions } from "./choices";
import { specOfKind } from "./kinds";

/** The chapter on the understanding file, made from what is allowed in it. */
export function understandingFileChapter(): string[] {
  return [
    "## The understanding file",
    "",
    "`windowline understand BOOK.xlsx --out BOOK.windowline.json` writes how a workbook is understood, and so does “Save” under",
    "Corrections in the pane. Correct what is wrong, and give the file with `--understanding`. What you leave out is read by its",
    "headings. A key or a word that is not in this list is refused by its name.",
    "",
    "| key | what you write |",
    "| --- | --- |",
    ...KEYS.map(([key, about]) => `| \`${key}\` | ${about} |`),
    "",
    "What `means` of a heading can be, for each kind of sheet (**needed** in bold; everyday headings are known without it):",
    "",
    "| `is` | `means` |",
    "| --- | --- |",
    ...SHEET_KINDS.filter((is) => is !== "not used").map((is) => `| \`${is}\` | ${columnsOf(is)} |`),
    "",
  ];
}

const listOf = (words: readonly string[]) => words.map((word) => `\`${word}\``).join(", ");

const KEYS: readonly (readonly [key: string, about: string])[] = [
  ["windowline", "Always `1`."],
  [
    "sheets: sheet",
    "The name of a sheet, one entry each; two where a sheet has two tables, such as children and their checks.",
  ],
  [
    "sheets: is",
    `One of ${listOf(SHEET_KINDS)}. A \`grid\` has one column per skill, \`observations\` one row per check.`,
  ],
  [
    "sheets: headerRows",
    "The row of the headings as the sheet numbers it, such as `[3]`; two rows where one heading spans several below it.",
  ],
  [
    "sheets: headings",
    'Each `heading` as the sheet writes it, with `means` (a column of the table below, or `null`: not used), or in a grid with `skill` (the skill of this column). Both, with `means` `"Date"`: the days on which this skill was checked.',
  ],
  [
    "sheets: headings, without a cell",
    `\`${SHEET_NAME}\`: the name of the sheet itself, such as one sheet per therapist, or per child. \`${ROW_TITLE}\`: what rows with one text alone say of the rows below, such as the site. \`${SHEET_DAY}\`: the one day of all checks of a grid, such as \`2026-09-30\`.`,
  ],
  [
    "words",
    `A \`word\` among results (\`""\`: a blank) \`means\` one of ${listOf(WORD_MEANINGS)}; \`null\`: not settled, so that its checks are listed and not used.`,
  ],
  [
    "areas",
    `A \`word\` for an area on referrals \`means\` one of ${listOf(AREAS)}, an area of your list of skills, several of them separated by semicolons, or \`${LEAVE_OUT}\`; \`null\`: not settled.`,
  ],
  [
    "names",
    "A `spelling` in a `column` of Children (`Site`, `Therapist`) `means` the spelling that counts; itself where it is a name of its own.",
  ],
  [
    "skills: skill, label, area",
    "A skill that no sheet lists: as the grid or the checks write it, how it is printed, and its area.",
  ],
  [
    "skills: opens, closes",
    "The expected window in months of age, from 0 to 216. `null` where you have no source: figures that need no window are made all the same.",
  ],
  [
    "skills: ageBasis",
    "`corrected`: the window counts from the due date of a child born early, until correction stops (usual). `chronological`: it counts from the birth date.",
  ],
  [
    "skills: expectedShare",
    "The share of children in the window's own source who do it by `closes`: above 0, up to 1, such as `0.99` or `0.75`. `null` where the source gives none. It is not a goal.",
  ],
  ["skills: basis", "Where the window comes from, in your words, such as a book, a rule or `common practice`."],
  [
    "decisions",
    "Corrections one by one, with `kind`: `same-child` (`child`, `alias`), `skill-alias` (`skill`, `alias`), `date-order` (`table`, `column`, `order`: `day first`, `month first` or `year first`), `heading` (`table`, `heading`, `means`), `two-digit-years` (`means`: `2000 to 2099` or `leave out`). With `revoked` `true` one is kept and not used.",
  ],
  ["settings", "Settings by the names above. An option of the command line comes first."],
];

function columnsOf(is: (typeof SHEET_KINDS)[number]): string {
  const needed = new Set(specOfKind(is)?.columns.flatMap(({ required, heading }) => (required ? [heading] : [])));
  return headingOptions(is)
    .map((means) =>
      means === null
        ? "`null` (not used)"
        : needed.has(means)
          ? `**${means}**`
          : means === "Group"
            ? "Group (any column to report by)"
            : means,
    )
    .join(", ");
}
