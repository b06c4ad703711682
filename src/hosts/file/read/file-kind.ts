import { refuse } from "./unreadable";

/** Refuses what is plainly not a zip file, in words that name what it is. */
export function checkIsZip(bytes: Uint8Array): void {
  if (bytes.length === 0) refuse("The file is empty: choose an Excel workbook (.xlsx).");
  if (startsWith(bytes, [0x50, 0x4b])) return;
  if (startsWith(bytes, COMPOUND)) {
    // ECMA-376 with a password is a compound file that holds a stream of this name ([MS-OFFCRYPTO], 2.3.4.4).
    refuse(
      includesWide(bytes, "EncryptedPackage")
        ? "The workbook is protected by a password: open it in Excel, remove the password (File, Info, Protect Workbook) and save it again."
        : "The file is in the older Excel form (.xls): open it in Excel and save it as .xlsx.",
    );
  }
  refuse(
    "The file is not an Excel workbook: choose a file saved as .xlsx, or open yours in Excel and save it as .xlsx.",
  );
}

/** For a zip file without a workbook in it. */
export function refuseOtherZip(parts: ReadonlyMap<string, unknown>): never {
  if (parts.has("mimetype")) {
    return refuse(
      "The file is an OpenDocument file: open it in its own program and save it as an Excel workbook (.xlsx).",
    );
  }
  if (parts.has("xl/workbook.bin")) return refuseBinary();
  return refuse("The file is a zip file without an Excel workbook: choose a file saved as .xlsx.");
}

export function refuseBinary(): never {
  return refuse("The file is a binary workbook (.xlsb): open it in Excel and save it as .xlsx.");
}

const COMPOUND = [0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1];

function startsWith(bytes: Uint8Array, start: readonly number[]): boolean {
  return start.every((byte, index) => bytes[index] === byte);
}

/** Whether a text stands somewhere in UTF-16, low byte first. */
function includesWide(bytes: Uint8Array, text: string): boolean {
  const wide = Array.from(text, (each) => [each.charCodeAt(0), 0]).flat();
  const first = wide[0] as number;
  for (let at = bytes.indexOf(first); at >= 0; at = bytes.indexOf(first, at + 1)) {
    if (wide.every((byte, index) => bytes[at + index] === byte)) return true;
  }
  return false;
}
