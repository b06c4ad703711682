import { SaxesParser, type SaxesTagNS } from "saxes";
import { refusePart, UnreadableWorkbook } from "./unreadable";
import { XmlText } from "./xml-text";

/** What a part's reader hears of its elements. Names are local names, `FOREIGN` for other namespaces than its own. */
export interface XmlHandler {
  open(name: string, parent: string, tag: SaxesTagNS): void;
  /** Text directly inside an element, in as many pieces as it comes. */
  text?(text: string, name: string): void;
  close?(name: string, parent: string): void;
}

export const FOREIGN = "";
/** The parent of the outermost element. */
export const OUTSIDE = "#";

/** A fallback SAX parser over the bytes of one part, with the refusals that every part shares. */
export class XmlReader {
  private readonly parser = new SaxesParser({ xmlns: true, position: false });
  private readonly decoder: XmlText;
  private readonly path: string[] = [];
  private bytes = 0;
  private sinceEvent = 0;
  private version = "1.0";

  constructor(
    private readonly part: string,
    private readonly namespaces: readonly string[],
    private readonly handler: XmlHandler,
    private readonly mostBytes: number,
  ) {
    this.decoder = new XmlText(part);
    this.listen();
  }

  /** Whether the bytes are what the byte scanner knows: UTF-8 and XML 1.0. */
  get isPlain(): boolean {
    return this.decoder.isUtf8 && this.version === "1.0";
  }

  write(piece: Uint8Array): void {
    this.bytes += piece.length;
    if (this.bytes > this.mostBytes) refusePart(this.part, "is too large for the unusual form it is written in");
    // One element that never ends would grow inside the parser: hand over slices and watch that something comes out.
    for (let at = 0; at < piece.length; at += SLICE_BYTES)
      this.feed(this.decoder.next(piece.subarray(at, at + SLICE_BYTES)));
  }

  end(): void {
    this.feed(this.decoder.end());
    this.guarded(() => this.parser.close());
  }

  private feed(text: string): void {
    this.sinceEvent += text.length;
    if (text !== "") this.guarded(() => this.parser.write(text));
    if (this.sinceEvent > LONGEST_TOKEN) refusePart(this.part, "has one piece of text that is too long to read");
  }

  private guarded(work: () => void): void {
    try {
      work();
    } catch (error) {
      if (error instanceof UnreadableWorkbook || !isParserError(error)) throw error;
      refusePart(this.part, "is not well-formed XML");
    }
  }

  private listen(): void {
    const { parser, path, handler } = this;
    parser.on("xmldecl", ({ version, encoding }) => this.declared(version, encoding));
    parser.on("doctype", () => refuseDoctype(this.part));
    parser.on("comment", () => (this.sinceEvent = 0));
    parser.on("processinginstruction", () => (this.sinceEvent = 0));
    parser.on("opentag", (tag) => this.opened(tag));
    parser.on("closetag", () => {
      this.sinceEvent = 0;
      const name = path.pop() as string;
      handler.close?.(name, path.at(-1) ?? OUTSIDE);
    });
    const text = (content: string): void => {
      this.sinceEvent = 0;
      if (path.length > 0) handler.text?.(content, path.at(-1) as string);
    };
    parser.on("text", text);
    parser.on("cdata", text);
  }

  private opened(tag: SaxesTagNS): void {
    this.sinceEvent = 0;
    if (this.path.length >= DEEPEST) refusePart(this.part, "is nested deeper than any workbook needs");
    const name = this.namespaces.includes(tag.uri) ? tag.local : FOREIGN;
    const parent = this.path.at(-1) ?? OUTSIDE;
    this.path.push(name);
    this.handler.open(name, parent, tag);
  }

  private declared(version: string | undefined, encoding: string | undefined): void {
    this.version = version ?? "1.0";
    const expected = this.decoder.isUtf8 ? /^(utf-8|us-ascii)$/i : /^utf-16(le|be)?$/i;
    if (encoding !== undefined && !expected.test(encoding)) {
      refusePart(this.part, "is in an encoding other than UTF-8 or UTF-16");
    }
  }
}

export function refuseDoctype(part: string): never {
  return refusePart(part, "declares a document type (DTD), which no workbook needs and which is never read");
}

/** The value of an attribute without a prefix. */
export function attribute(tag: SaxesTagNS, name: string): string | null {
  return tag.attributes[name]?.value ?? null;
}

/** The value of an attribute of one of some namespaces, whatever its prefix. */
export function attributeNS(tag: SaxesTagNS, namespaces: readonly string[], local: string): string | null {
  const found = Object.values(tag.attributes).find((each) => each.local === local && namespaces.includes(each.uri));
  return found?.value ?? null;
}

const SLICE_BYTES = 65_536;
const LONGEST_TOKEN = 4_000_000;
const DEEPEST = 100;

/** saxes throws plain errors; a RangeError or TypeError would be a fault of ours and must not pass as damage. */
function isParserError(error: unknown): boolean {
  return error instanceof Error && Object.getPrototypeOf(error) === Error.prototype;
}
