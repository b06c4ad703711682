import { crc32 } from "./crc32";
import { checkIsZip } from "./file-kind";
import type { Inflate } from "./inflate";
import type { Limits } from "./limits";
import { damagedPart, refuse, refuseDamaged, refusePart } from "./unreadable";
import { partKey, type ZipEntry, zipDirectory } from "./zip-directory";

/** The parts of a workbook file, inflated on demand and never more than they declare. */
export class PackageParts {
  readonly entries: ReadonlyMap<string, ZipEntry>;

  constructor(
    private readonly bytes: Uint8Array,
    readonly limits: Limits,
    private readonly inflate: Inflate,
  ) {
    if (bytes.length > limits.fileBytes) {
      refuse(`The file is larger than ${Math.round(limits.fileBytes / 1e6)} MB, the most that is read: split it.`);
    }
    checkIsZip(bytes);
    this.entries = zipDirectory(bytes, limits);
  }

  has(part: string): boolean {
    return this.entries.has(partKey(part));
  }

  /** Hands over the bytes of a part, whole and checked against size and checksum by the time the promise resolves. */
  async read(part: string, take: (piece: Uint8Array) => void): Promise<void> {
    const entry = this.entry(part);
    let inflated = 0;
    let crc = 0;
    const checksum = this.inflate.checksum ?? crc32;
    await this.pieces(entry, (piece) => {
      inflated += piece.length;
      if (inflated > entry.inflatedBytes) refuseDamaged(entry.name);
      crc = checksum(piece, crc);
      take(piece);
    });
    if (inflated !== entry.inflatedBytes || crc !== entry.crc) refuseDamaged(entry.name);
  }

  /** Hands over the bytes of a part from its start for as long as `wants` says true, unchecked. */
  async peek(part: string, wants: (piece: Uint8Array) => boolean): Promise<void> {
    const enough = new Error("enough");
    await this.pieces(this.entry(part), (piece) => {
      if (!wants(piece)) throw enough;
    }).catch((error: unknown) => {
      if (error !== enough) throw error;
    });
  }

  private entry(part: string): ZipEntry {
    return this.entries.get(partKey(part)) ?? refusePart(part, "is missing");
  }

  private async pieces(entry: ZipEntry, take: (piece: Uint8Array) => void): Promise<void> {
    const data = this.bytes.subarray(entry.dataAt, entry.dataAt + entry.deflatedBytes);
    if (entry.method === STORED) return take(data);
    if (entry.method !== DEFLATED) refusePart(entry.name, "is compressed in a way that is not read");
    const thrown: unknown[] = [];
    try {
      await this.inflate(data, (piece) => passedOn(take, piece, thrown));
    } catch {
      throw thrown.length > 0 ? thrown[0] : damagedPart(entry.name);
    }
  }
}

const STORED = 0;
const DEFLATED = 8;

/** What the taker throws is told apart from what inflation throws: only the second means damage. */
function passedOn(take: (piece: Uint8Array) => void, piece: Uint8Array, thrown: unknown[]): void {
  try {
    take(piece);
  } catch (error) {
    thrown.push(error);
    throw error;
  }
}
