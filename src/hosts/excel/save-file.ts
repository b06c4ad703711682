/// <reference types="office-js" />
import type { JobOptions, SavedAs } from "../../workbook/host";
import { patiently, type Patience } from "./run";

const XLSX = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";
/** Excel on the web takes 5 MB a request. */
const MOST_BASE64 = 4_500_000;

/** Opens a workbook beside this one, as Excel itself does; any other file, and one too large for that, is a download. */
export async function saveFile(
  fileName: string,
  bytes: Uint8Array,
  mimeType: string,
  patience: Patience,
  options?: JobOptions,
): Promise<SavedAs> {
  const isWorkbook = mimeType === XLSX && (bytes.length * 4) / 3 < MOST_BASE64;
  if (!isWorkbook) {
    download(fileName, bytes, mimeType);
    return "downloaded";
  }
  const base64 = base64Of(bytes);
  await patiently(() => Excel.createWorkbook(base64), patience, options);
  return "opened";
}

/** A whole number of base64's groups of three, short enough to be a call's arguments. */
const PIECE_BYTES = 3 * 8192;

function base64Of(bytes: Uint8Array): string {
  let base64 = "";
  for (let at = 0; at < bytes.length; at += PIECE_BYTES) {
    base64 += btoa(String.fromCharCode(...bytes.subarray(at, at + PIECE_BYTES)));
  }
  return base64;
}

const KEPT_MS = 60_000;

export function download(fileName: string, bytes: Uint8Array, mimeType: string): void {
  const url = URL.createObjectURL(new Blob([bytes as Uint8Array<ArrayBuffer>], { type: mimeType }));
  const link = document.createElement("a");
  link.href = url;
  link.download = fileName;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), KEPT_MS);
}
