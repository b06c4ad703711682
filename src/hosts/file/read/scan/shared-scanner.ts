import { unescaped } from "../escapes";
import type { SharedTextsHandler } from "../text-list";
import type { Texts } from "../texts";
import { literal, skipSpace, startsAt, STUCK } from "./bytes";
import { TextScanner } from "./scan-text";
import type { Scanner } from "./scanned-part";

/** Reads the plain texts of the shared list from bytes; a text in several runs is left to the fallback parser. */
export class SharedScanner implements Scanner {
  readonly container = literal("<sst");
  private readonly text = new TextScanner();

  constructor(
    private readonly texts: Texts,
    private readonly handler: SharedTextsHandler,
  ) {}

  get isReady(): boolean {
    return this.handler.isInList;
  }

  next(bytes: Uint8Array, from: number): number {
    let at = skipSpace(bytes, from);
    if (!startsAt(bytes, at, ITEM)) return STUCK;
    at = skipSpace(bytes, at + ITEM.length);
    const isKept = startsAt(bytes, at, TEXT_KEPT);
    if (!isKept && !startsAt(bytes, at, TEXT)) return STUCK;
    at = this.text.read(bytes, at + (isKept ? TEXT_KEPT : TEXT).length);
    if (at === STUCK || !startsAt(bytes, at, TEXT_END)) return STUCK;
    at = skipSpace(bytes, at + TEXT_END.length);
    if (!startsAt(bytes, at, ITEM_END)) return STUCK;
    this.texts.addShared(unescaped(this.text.text));
    return at + ITEM_END.length;
  }

  isAtEnd(bytes: Uint8Array, at: number): boolean {
    return startsAt(bytes, skipSpace(bytes, at), LIST_END);
  }

  /** The parser stands between two items already. */
  handOver(): void {}
}

const ITEM = literal("<si>");
const ITEM_END = literal("</si>");
const TEXT = literal("<t>");
const TEXT_KEPT = literal('<t xml:space="preserve">');
const TEXT_END = literal("</t>");
const LIST_END = literal("</sst");
