import { existsSync, readFileSync, realpathSync, renameSync, rmSync, statSync, writeFileSync } from "node:fs";
import path from "node:path";
import { strFromU8, unzipSync } from "fflate";
import { TEXT_MARK } from "../report/release/release-text";
import { badRequest, CommandFailure, unreadable } from "./failure";

/** A device or a pipe has no end to be read to: it is refused before a byte is read. */
export function readBytes(file: string): Uint8Array {
  try {
    const found = statSync(file);
    if (!found.isFile() && !found.isDirectory())
      throw unreadable(`${file} is not a file but a device or a pipe. Name the workbook itself.`);
    return new Uint8Array(readFileSync(file));
  } catch (error) {
    if (error instanceof CommandFailure) throw error;
    throw unreadable(
      `${file} cannot be read (${reasonOf(error)}). Check the name and folder, and close it in other programs.`,
    );
  }
}

export function isFolder(file: string): boolean {
  return existsSync(file) && statSync(file).isDirectory();
}

export function readJson(file: string): unknown {
  const text = strFromU8(readBytes(file));
  try {
    return JSON.parse(text);
  } catch {
    throw badRequest(`${file} is not JSON. Write it as the README shows, or leave the option out.`);
  }
}

/**
 * Refuses outputs that would overwrite an input, each other, or a file that this program did not make.
 *
 * @param inputs - files that are only read
 */
export function checkOutputs(inputs: readonly string[], outputs: readonly string[]): void {
  const taken = new Set(inputs.map(identityOf));
  for (const output of outputs) {
    const identity = identityOf(output);
    if (taken.has(identity)) {
      throw badRequest(
        `${output} is an input of this run or named twice. Give another file name: nothing was written.`,
      );
    }
    taken.add(identity);
    if (!existsSync(path.dirname(path.resolve(output)))) {
      throw badRequest(`The folder of ${output} does not exist. Make it first, or name another.`);
    }
    if (existsSync(output) && isSettled(output)) {
      throw badRequest(
        `${output} is there already and may have what you settled. Give it with --understanding, and name another file with --out.`,
      );
    }
    if (existsSync(output) && !isOwnWork(output)) {
      throw badRequest(
        `${output} is there already and was not made by Windowline. Name another file, or move that one away.`,
      );
    }
  }
}

/** Written beside its place and then moved, so that a broken run leaves nothing half-written. */
export function writeWhole(file: string, content: string | Uint8Array): void {
  const beside = `${file}.${process.pid}.tmp`;
  try {
    writeFileSync(beside, content);
    renameSync(beside, file);
  } catch (error) {
    rmSync(beside, { force: true });
    throw badRequest(
      `${file} cannot be written (${reasonOf(error)}). Close it in other programs, or name another file.`,
    );
  }
}

/** All files or none: each is written beside its place first, and only then are they moved, in the order given. */
export function writeTogether(
  files: readonly { readonly file: string; readonly content: string | Uint8Array }[],
): void {
  const staged: string[] = [];
  try {
    for (const { file, content } of files) {
      const beside = `${file}.${process.pid}.tmp`;
      staged.push(beside);
      writeFileSync(beside, content);
    }
    files.forEach(({ file }, index) => renameSync(staged[index] as string, file));
  } catch (error) {
    for (const beside of staged) rmSync(beside, { force: true });
    throw badRequest(
      `The files cannot all be written (${reasonOf(error)}). Close them in other programs, or name another folder.`,
    );
  }
}

function identityOf(file: string): string {
  return existsSync(file) ? realpathSync(file) : path.resolve(file);
}

/** A file of `windowline understand`, which a person may have corrected since. */
function isSettled(file: string): boolean {
  if (!statSync(file).isFile()) return false;
  return /^\s*\{\s*"windowline"\s*:/.test(readFileSync(file).subarray(0, 200).toString("utf8"));
}

function isOwnWork(file: string): boolean {
  if (!statSync(file).isFile()) return false;
  const bytes = new Uint8Array(readFileSync(file));
  if (bytes.length === 0) return true;
  if (bytes[0] === 0x7b) return /"Windowline"|"Alder Fork \(invented/.test(strFromU8(bytes.subarray(0, 200)));
  return marksOf(bytes).includes("Windowline") || isOwnRelease(bytes);
}

/** CSV, text and pictures of a release, by their first or last words. */
function isOwnRelease(bytes: Uint8Array): boolean {
  const [start, end] = [bytes.subarray(0, HEAD_BYTES), bytes.subarray(-TAIL_BYTES)].map((each) =>
    strFromU8(each, true),
  );
  if (start === undefined || end === undefined) return false;
  if (start.startsWith("\u0089PNG")) return end.includes("Software\0Windowline");
  if (start.startsWith("<?xml")) return strFromU8(bytes).includes("Drawn by Windowline.</desc>");
  return start.startsWith(TEXT_MARK) || OWN_CSV.test(start);
}

const HEAD_BYTES = 2_000;
const TAIL_BYTES = 100;
/** A byte order mark, read byte by byte, and the headings of a table that only Windowline makes. */
const OWN_CSV =
  /^\u00EF\u00BB\u00BF(?:[^\r\n]*,)?(?:skill,(?:area,band|age|children)|quarter,skill|dimension,value|step,of,count|outcome,a,b,c,d,e),/;

function marksOf(bytes: Uint8Array): string {
  try {
    const parts = unzipSync(bytes, {
      filter: (part) => part.name.startsWith("docProps/") && part.originalSize < 65_536,
    });
    return Object.values(parts)
      .map((part) => strFromU8(part))
      .join("\n");
  } catch {
    return "";
  }
}

function reasonOf(error: unknown): string {
  const code = (error as { code?: unknown }).code;
  if (code === "ENOENT") return "no such file";
  if (code === "EISDIR") return "it is a folder";
  if (code === "EACCES" || code === "EPERM") return "no permission";
  return typeof code === "string" ? code : "unknown reason";
}
