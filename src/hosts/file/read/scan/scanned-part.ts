import type { XmlReader } from "../xml-reader";
import { ENDING_ZEROS, LESS, MORE, startsAt, STUCK } from "./bytes";

/** What reads the inside of one element from bytes, unit by unit. */
export interface Scanner {
  /** `<` and the name of the element. */
  readonly container: Uint8Array;
  /** Whether the fallback parser stands inside that element. */
  readonly isReady: boolean;
  /** Reads one whole unit and gives the place after it; `STUCK`, with nothing done, where it cannot. */
  next(bytes: Uint8Array, at: number): number;
  /** Whether the end tag of the element stands here. */
  isAtEnd(bytes: Uint8Array, at: number): boolean;
  /** Tells the fallback parser where it is to go on. */
  handOver(xml: XmlReader): void;
}

/**
 * One part, in pieces: the fallback parser reads all of it but the inside of one element, which a scanner reads as far as it
 * recognises every byte. What it does not recognise, and all after it, the fallback parser reads.
 */
export class ScannedPart {
  private state: "before" | "scanning" | "parsing" = "before";
  private readonly buffer = new Uint8Array(BUFFER_BYTES + ENDING_ZEROS);
  private filled = 0;

  constructor(
    private readonly xml: XmlReader,
    private readonly scanner: Scanner,
  ) {}

  write(piece: Uint8Array): void {
    for (let at = 0; at < piece.length;) {
      if (this.state === "parsing") return this.xml.write(piece.subarray(at));
      const size = Math.min(piece.length - at, BUFFER_BYTES - this.filled);
      this.buffer.set(piece.subarray(at, at + size), this.filled);
      this.filled += size;
      this.buffer.fill(0, this.filled, this.filled + ENDING_ZEROS);
      at += size;
      this.advance();
    }
  }

  end(): void {
    this.giveUp();
    this.xml.write(this.buffer.subarray(0, this.filled));
    this.xml.end();
  }

  private advance(): void {
    let at = this.state === "before" ? this.findContainer() : 0;
    if (this.state === "scanning") at = this.scan(at);
    if (this.filled - at > LONGEST_UNIT) this.giveUp();
    if ((this.state as string) === "parsing") {
      this.xml.write(this.buffer.subarray(at, this.filled));
      at = this.filled;
    }
    this.buffer.copyWithin(0, at, this.filled);
    this.filled -= at;
  }

  private giveUp(): void {
    if (this.state === "scanning") this.scanner.handOver(this.xml);
    this.state = "parsing";
  }

  private scan(from: number): number {
    let at = from;
    for (let next = at; next !== STUCK; next = this.scanner.next(this.buffer, at)) at = next;
    if (this.scanner.isAtEnd(this.buffer, at)) this.state = "parsing";
    return at;
  }

  /** Feeds the parser up to and with the start tag of the container; gives the first byte not yet fed. */
  private findContainer(): number {
    for (let at = 0; ;) {
      const found = this.indexOfContainer(at);
      if (found === STUCK) return this.fed(at, Math.max(at, this.filled - this.scanner.container.length));
      const end = this.buffer.indexOf(MORE, found);
      if (end < 0) return this.fed(at, found);
      this.fed(at, end);
      const wasReady = this.scanner.isReady;
      at = this.fed(end, end + 1);
      // Only the `>` that itself opened the element puts the parser just inside: not one in a comment or a quoted value.
      if (!wasReady && this.scanner.isReady && this.xml.isPlain) {
        this.state = "scanning";
        return at;
      }
    }
  }

  private indexOfContainer(from: number): number {
    for (let at = this.buffer.indexOf(LESS, from); at >= 0; at = this.buffer.indexOf(LESS, at + 1)) {
      if (startsAt(this.buffer, at, this.scanner.container)) return at;
    }
    return STUCK;
  }

  private fed(from: number, to: number): number {
    if (to > from) this.xml.write(this.buffer.subarray(from, to));
    return to;
  }
}

const BUFFER_BYTES = 524_288;
/** A cell of 32,767 characters, six bytes each. A longer unit goes to the fallback parser. */
const LONGEST_UNIT = 200_000;
