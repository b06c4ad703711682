import { sha256 } from "@noble/hashes/sha2";
import { bytesToHex } from "@noble/hashes/utils";
import { canonicalJson } from "./canonical-json";
import type { LedgerEntryBody } from "./ledger-entry";
import { ledgerSchema } from "./ledger-schema";

/**
 * What has left the program: the figures each release showed and how they hang together, so that a later release can be
 * protected against all of them. Never a hidden count (METHOD.md, section 7).
 *
 * Each entry's hash covers the hash before it and its own body: nothing between can be changed, moved or taken out
 * without every later hash failing. What a hash chain cannot show is that its last entries were cut off; who wants to
 * notice that keeps the last hash, which each release prints.
 */
export interface Ledger {
  readonly entries: readonly LedgerEntry[];
}

export interface LedgerEntry {
  readonly body: LedgerEntryBody;
  /** SHA-256, hexadecimal. */
  readonly hash: string;
}

export const EMPTY_LEDGER: Ledger = { entries: [] };

/** A ledger from the text of its file, or one sentence that says what is wrong and what to do. */
export function parseLedger(text: string): { readonly ledger: Ledger } | { readonly message: string } {
  if (text.length > MOST_CHARACTERS) return { message: TOO_LARGE };
  const value = jsonOf(text);
  if (value === undefined) return { message: NO_JSON };
  const stranger = strangerIn(value);
  if (stranger !== null) return { message: stranger };
  const parsed = ledgerSchema.safeParse(value);
  if (!parsed.success) return { message: unfit(parsed.error.issues[0]?.path ?? []) };
  const { entries } = parsed.data;
  const odd = entries.findIndex(({ body }) => !isWhole(body));
  if (odd >= 0) return { message: unfit(["entries", odd]) };
  const broken = firstBroken(entries);
  return broken === null ? { ledger: { entries } } : { message: doesNotVerify(broken, entries.length) };
}

/** The ledger with one more release; the same one where that release is its last already. */
export function appendEntry(ledger: Ledger, body: LedgerEntryBody): Ledger {
  if (!isWhole(body) || !ledgerSchema.shape.entries.element.shape.body.safeParse(body).success) {
    throw new RangeError("appendEntry: a release that no ledger could be read with again");
  }
  const last = ledger.entries.at(-1);
  if (last && canonicalJson(last.body) === canonicalJson(body)) return ledger;
  return { entries: [...ledger.entries, { body, hash: hashOf(last?.hash ?? "", body) }] };
}

/** The file of a ledger: a cell on a line of its own, the same bytes for the same releases. */
export function ledgerText({ entries }: Ledger): string {
  const each = entries.map(({ body, hash }) => `{"body": ${bodyText(body)},\n"hash": "${hash}"}`);
  const head = `{"tool": "Windowline", "holds": "releases", "format": 1,\n"about": ${JSON.stringify(ABOUT)},\n`;
  return `${head}"entries": [${each.length === 0 ? "" : `\n${each.join(",\n")}\n`}]}\n`;
}

/** The hash to keep elsewhere, for whoever wants to notice a release log cut short. */
export function headOf({ entries }: Ledger): string | null {
  return entries.at(-1)?.hash ?? null;
}

const MOST_CHARACTERS = 200_000_000;
const ABOUT =
  "What left the program, release by release; a hidden count is null. Keep this file with the records, and change nothing in it by hand: each hash covers all that comes before it.";

const RESTORE = "take the latest copy of it that verifies, or name another file and begin anew";
const NO_JSON = `The release log cannot be read as JSON: ${RESTORE}; nothing was written.`;
const TOO_LARGE = `The release log is larger than 200 MB, more than any that Windowline writes: ${RESTORE}; nothing was written.`;
const STRANGER =
  "The release log named is not one that Windowline wrote: name the log of this program's releases, or a file that does not exist yet; nothing was written.";
const NEWER = "The release log was written by a newer Windowline: use that version; nothing was written.";

function jsonOf(text: string): unknown {
  try {
    return JSON.parse(text.replace(/^\uFEFF/, ""));
  } catch {
    return undefined;
  }
}

/** Said before any detail: a ledger of another tool or of a later one is not damaged. */
function strangerIn(value: unknown): string | null {
  if (typeof value !== "object" || value === null || Array.isArray(value)) return STRANGER;
  const { tool, holds, format } = value as Record<string, unknown>;
  if (tool !== "Windowline" || holds !== "releases") return STRANGER;
  return typeof format === "number" && Number.isInteger(format) && format > 1 ? NEWER : null;
}

function unfit(path: readonly PropertyKey[]): string {
  const at =
    path[0] === "entries" && typeof path[1] === "number"
      ? `In release ${path[1] + 1} of the release log`
      : "In the release log";
  return `${at} something is missing, added or not a whole number, so that it cannot be relied on: ${RESTORE}; nothing was written.`;
}

function doesNotVerify(entry: number, of: number): string {
  return `The release log does not verify from its release ${entry + 1} of ${of} on, so something in it was changed, moved or taken out: ${RESTORE}; nothing was written.`;
}

/** Every key once, every term within the cells. */
function isWhole({ cells, equations }: LedgerEntryBody): boolean {
  if (new Set(cells.map(({ key }) => key)).size < cells.length) return false;
  return equations.every(({ terms }) => terms.every(({ cell }) => cell < cells.length));
}

function firstBroken(entries: readonly LedgerEntry[]): number | null {
  const at = entries.findIndex(({ body, hash }, index) => hashOf(entries[index - 1]?.hash ?? "", body) !== hash);
  return at < 0 ? null : at;
}

const encoder = new TextEncoder();

function hashOf(before: string, body: LedgerEntryBody): string {
  return bytesToHex(sha256(encoder.encode(`${before}\n${canonicalJson(body)}`)));
}

function bodyText({ asOf, from, tables, rule, definition, cells, equations }: LedgerEntryBody): string {
  const said = JSON.stringify({ asOf, from, tables, rule, definition }).slice(0, -1);
  return `${said},\n"cells": ${onLines(cells)},\n"equations": ${onLines(equations)}}`;
}

function onLines(list: readonly unknown[]): string {
  return list.length === 0 ? "[]" : `[\n${list.map((each) => JSON.stringify(each)).join(",\n")}]`;
}
