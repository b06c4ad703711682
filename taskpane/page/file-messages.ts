import type { WorkbookIn } from "../../src/workbook/workbook";

export interface FileRequest {
  readonly job: number;
  readonly bytes: Uint8Array;
}

export type FileReply = { readonly job: number } & (
  | { readonly workbook: WorkbookIn }
  /** Words for the person, or null where the failure is none that they could mend. */
  | { readonly failure: string | null }
);
