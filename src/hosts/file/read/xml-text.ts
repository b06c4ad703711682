import { refusePart } from "./unreadable";

/**
 * Bytes of an XML part to text, whatever the pieces: UTF-8 or UTF-16, told by the first bytes.
 * Source: Extensible Markup Language (XML) 1.0, appendix F.
 */
export class XmlText {
  private decoder: TextDecoder | null = null;
  private head: Uint8Array = new Uint8Array(0);

  constructor(private readonly part: string) {}

  get isUtf8(): boolean {
    return this.decoder?.encoding === "utf-8";
  }

  next(piece: Uint8Array): string {
    if (this.decoder !== null) return this.decode(this.decoder, piece, false);
    const head = new Uint8Array(this.head.length + piece.length);
    head.set(this.head);
    head.set(piece, this.head.length);
    this.head = head;
    return head.length < 4 ? "" : this.start();
  }

  end(): string {
    const start = this.decoder === null ? this.start() : "";
    return start + (this.decoder === null ? "" : this.decode(this.decoder, new Uint8Array(0), true));
  }

  private start(): string {
    this.decoder = new TextDecoder(encodingOf(this.head), { fatal: true });
    return this.decode(this.decoder, this.head, false);
  }

  private decode(decoder: TextDecoder, piece: Uint8Array, last: boolean): string {
    try {
      return decoder.decode(piece, { stream: !last });
    } catch {
      return refusePart(this.part, "has bytes that are not text");
    }
  }
}

export function encodingOf(head: Uint8Array): "utf-8" | "utf-16le" | "utf-16be" {
  const [first, second] = head;
  if ((first === 0xff && second === 0xfe) || (first === 0x3c && second === 0)) return "utf-16le";
  if ((first === 0xfe && second === 0xff) || (first === 0 && second === 0x3c)) return "utf-16be";
  return "utf-8";
}
