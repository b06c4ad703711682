import type { SheetOut } from "../../src/workbook/sheets";
import type { WorkbookIn } from "../../src/workbook/workbook";

export type FileRequest =
  | { readonly job: number; readonly kind: "read"; readonly bytes: Uint8Array }
  | {
      readonly job: number;
      readonly kind: "write";
      readonly workbook: WorkbookIn;
      readonly made: ReadonlyMap<string, SheetOut>;
      readonly created: string;
    };

export type FileReply = { readonly job: number } & (
  | { readonly workbook: WorkbookIn }
  | { readonly bytes: Uint8Array }
  /** Words for the person, or null where the failure is none that they could mend. */
  | { readonly failure: string | null }
);
