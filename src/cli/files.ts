import { existsSync, readFileSync, realpathSync, renameSync, rmSync, statSync, writeFileSync } from "node:fs";
import path from "node:path";
import { strFromU8, unzipSync } from "fflate";
import { badRequest, unreadable } from "./failure";

export function readBytes(file: string): Uint8Array {
  try {
    return new Uint8Array(readFileSync(file));
  } catch (error) {
    throw unreadable(
      `${file} cannot be read (${reasonOf(error)}). Check the name and folder, and close it in other programs.`,
    );
  }
}

export function readJson(file: string): unknown {
  const text = strFromU8(readBytes(file));
  try {
    return JSON.parse(text);
  } catch {
    throw badRequest(`${file} is no JSON. Write it as the README shows, or leave the option out.`);
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

function identityOf(file: string): string {
  return existsSync(file) ? realpathSync(file) : path.resolve(file);
}

function isOwnWork(file: string): boolean {
  if (!statSync(file).isFile()) return false;
  const bytes = new Uint8Array(readFileSync(file));
  if (bytes.length === 0) return true;
  if (bytes[0] === 0x7b) return /"Windowline"|"Alder Fork \(invented/.test(strFromU8(bytes.subarray(0, 200)));
  return marksOf(bytes).includes("Windowline");
}

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
