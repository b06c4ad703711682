import { HostFailure } from "../../workbook/host";

/** The code of an error of Office.js; null for any other error. */
export function richCode(error: unknown): string | null {
  const code = error instanceof Error ? (error as { code?: unknown }).code : undefined;
  return typeof code === "string" ? code : null;
}

/**
 * An error of Office.js as a sentence for a person. Its own message is left out, since it may quote a cell; code and place name only
 * members of the API. Errors that are not Excel's own pass unchanged.
 *
 * Source of the codes: Microsoft, "Error handling with the application-specific JavaScript APIs".
 */
export function inWords(error: unknown, doing: "reading" | "changing" = "changing"): unknown {
  const code = richCode(error);
  if (code === null || error instanceof HostFailure) return error;
  if (doing === "reading" && SENTENCES[code] === REFUSED) return new HostFailure(...NOT_READABLE);
  const [kind, sentence] = Object.hasOwn(SENTENCES, code) ? (SENTENCES[code] as Sentence) : unknown(error, code);
  return new HostFailure(kind, sentence);
}

type Sentence = readonly [HostFailure["kind"], string];

const GONE: Sentence = [
  "changed meanwhile",
  "A sheet or table is no longer where it was. Read the workbook again, then try once more.",
];
const REFUSED: Sentence = [
  "locked",
  "Excel does not allow this change here. Unprotect the workbook (Review, Protect Workbook) or ask its owner, or save the report as a new workbook.",
];
const NOT_READABLE: Sentence = [
  "locked",
  "Excel does not let this workbook be read. If a yellow bar says Protected View, choose Enable Editing; otherwise ask the workbook's owner for access, then try again.",
];
const TOO_MUCH: Sentence = [
  "too large",
  "This is more than Excel hands over at once. Use fewer rows, or run the command line on the saved file.",
];
const NOT_HERE: Sentence = [
  "not supported",
  "This version of Excel cannot do this. Update Excel, or run the command line on the saved file.",
];

export const EDITING =
  "Excel waits while a cell is being edited. Finish the cell with Enter, or leave it with Esc, then try again.";

export const UNANSWERED =
  "Excel has not answered yet. Check whether Excel shows a question or a message, and answer it there, or wait.";

const SENTENCES: Readonly<Record<string, Sentence>> = {
  InvalidOperationInCellEditMode: ["editing a cell", EDITING],
  ItemNotFound: GONE,
  InvalidReference: GONE,
  InvalidBinding: GONE,
  AccessDenied: REFUSED,
  Unauthenticated: REFUSED,
  RequestPayloadSizeLimitExceeded: TOO_MUCH,
  ResponsePayloadSizeLimitExceeded: TOO_MUCH,
  ApiNotFound: NOT_HERE,
  ApiNotAvailable: NOT_HERE,
  UnsupportedOperation: NOT_HERE,
  InvalidOperation: [
    "locked",
    "Excel does not do this here: the last visible sheet cannot be deleted, nor a hidden one shown. Unhide another sheet, then try once more.",
  ],
  MemoryLimitReached: [
    "too large",
    "Excel has no memory left for this. Close other workbooks, then try again, or run the command line on the saved file.",
  ],
  ItemAlreadyExists: ["changed meanwhile", "A sheet or table of this name was added meanwhile. Try once more."],
};

function unknown(error: unknown, code: string): Sentence {
  const { debugInfo } = error as { debugInfo?: { errorLocation?: unknown } };
  const place = typeof debugInfo?.errorLocation === "string" ? debugInfo.errorLocation : "";
  return [
    "unknown",
    `Excel refused a step (${[code, place].filter((each) => each !== "").join(", ")}). Try once more.`,
  ];
}
