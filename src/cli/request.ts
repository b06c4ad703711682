/**
 * What was asked for on the command line, before anything is read. `books` are read as one program: workbooks, or folders
 * of them.
 */
export type Request =
  | {
      readonly kind: "report";
      /** The last REPORT.json, to tell rows that are gone; null: nothing is compared. */
      readonly last: string | null;
      readonly books: readonly string[];
      readonly out: string | null;
      /** Null: beside the report, with "-data" at the end of its name. */
      readonly data: string | null;
      readonly json: string | null;
      /** Ids; null: all that are not internal. */
      readonly tables: readonly string[] | null;
      readonly understanding: string | null;
      readonly decisions: string | null;
      readonly settings: Readonly<Record<string, unknown>>;
    }
  | {
      readonly kind: "check";
      readonly books: readonly string[];
      readonly json: string | null;
      readonly understanding: string | null;
      readonly decisions: string | null;
      readonly settings: Readonly<Record<string, unknown>>;
    }
  | {
      readonly kind: "page";
      readonly books: readonly string[];
      readonly out: string;
      /** One of the two. */
      readonly child: string | null;
      readonly therapist: string | null;
      /** How many visits the plan on a caseload page is for. */
      readonly visits: number;
      readonly understanding: string | null;
      readonly decisions: string | null;
      readonly settings: Readonly<Record<string, unknown>>;
    }
  | {
      readonly kind: "release";
      readonly books: readonly string[];
      readonly out: string;
      /** Ids of tables; null where a question is asked instead. */
      readonly tables: readonly string[] | null;
      /** Questions to be answered by the tables and the settings that show most of their figures. */
      readonly answer: readonly string[] | null;
      /** Whether what shows more of the tables is tried, and said. */
      readonly tries: boolean;
      /** Whether it is only said what the release log takes from it; nothing is written. */
      readonly plan: boolean;
      readonly formats: readonly string[];
      /** A file that may not be there yet; null: earlier releases are not looked at. */
      readonly ledger: string | null;
      /** Ids of the skills that pictures show; null: whole areas. */
      readonly skills: readonly string[] | null;
      /** A text to check against the release. */
      readonly prose: string | null;
      /** An earlier REPORT.json. */
      readonly earlier: string | null;
      readonly understanding: string | null;
      readonly decisions: string | null;
      readonly settings: Readonly<Record<string, unknown>>;
    }
  | {
      readonly kind: "understand";
      readonly books: readonly string[];
      readonly out: string | null;
      readonly understanding: string | null;
    }
  | { readonly kind: "template"; readonly out: string }
  | {
      readonly kind: "again";
      /** A report workbook or a REPORT.json. */
      readonly report: string;
      readonly books: readonly string[];
      readonly understanding: string | null;
      readonly decisions: string | null;
    }
  | {
      readonly kind: "changed";
      /** A workbook or a REPORT.json. */
      readonly earlier: string;
      readonly books: readonly string[];
      readonly out: string | null;
      readonly json: string | null;
      /** Ids; null: all that are not internal. */
      readonly tables: readonly string[] | null;
      readonly understanding: string | null;
      readonly decisions: string | null;
      readonly settings: Readonly<Record<string, unknown>>;
      /** Of the earlier workbook, where it is not as the later: settings, and files that say how it is read. */
      readonly earlierSettings: Readonly<Record<string, unknown>>;
      readonly earlierUnderstanding: string | null;
      readonly earlierDecisions: string | null;
    }
  | {
      readonly kind: "firm";
      readonly books: readonly string[];
      /** As `met-by-band/walk-alone/"12 to <18 months"/shareMet`. */
      readonly figure: string;
      readonly json: string | null;
      readonly understanding: string | null;
      readonly decisions: string | null;
      readonly settings: Readonly<Record<string, unknown>>;
    }
  | { readonly kind: "call"; readonly name: string }
  | {
      readonly kind: "sample";
      readonly children: number;
      readonly seed: number;
      readonly out: string;
      readonly defects: boolean;
      readonly truth: string | null;
    };

export type RequestOf<Kind extends Request["kind"]> = Extract<Request, { kind: Kind }>;
