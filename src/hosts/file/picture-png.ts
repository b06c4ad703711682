import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { strToU8 } from "fflate";
import { crc32 } from "./read/crc32";
import { PICTURE_FONT } from "./picture-spec";
import { chunksOf, SOFTWARE } from "./scan/scan-png";

/** The picture as PNG, twice its size for print, in the font that lies beside the tool. For Node. */
export async function pngOf(svg: string): Promise<Uint8Array> {
  const Resvg = await drawer();
  const font = {
    fontFiles: [FONT_FILE, BOLD_FILE].map((file) => fileURLToPath(file)),
    loadSystemFonts: false,
    defaultFontFamily: PICTURE_FONT,
    sansSerifFamily: PICTURE_FONT,
  };
  for (const file of font.fontFiles) readFileSync(file);
  const image = new Resvg(svg, { font, fitTo: { mode: "zoom", value: 2 } }).render().asPng();
  return signed(new Uint8Array(image));
}

/** The module that draws has a part of its own for each kind of machine, and is left out where there is none. */
async function drawer() {
  try {
    return (await import("@resvg/resvg-js")).Resvg;
  } catch {
    throw new PngMissing();
  }
}

export class PngMissing extends Error {
  override readonly name = "PngMissing";
  constructor() {
    super(
      'The module that draws PNG, @resvg/resvg-js, is not installed on this machine: run "npm install" again, or ask for svg in place of png. Nothing was written.',
    );
  }
}

/** Written so that webpack carries the files into the bundle's folder and plain Node finds them in place. */
const FONT_FILE = new URL("../../../node_modules/source-sans/TTF/SourceSans3-Regular.ttf", import.meta.url);
const BOLD_FILE = new URL("../../../node_modules/source-sans/TTF/SourceSans3-Bold.ttf", import.meta.url);

/** Says which program drew it, so that a later run knows its own work and overwrites nothing else. */
function signed(png: Uint8Array): Uint8Array {
  const end = chunksOf("the picture", png).find(({ type }) => type === "IEND")?.at ?? png.length;
  const body = strToU8(`tEXt${SOFTWARE}`, true);
  const chunk = new Uint8Array(body.length + 8);
  const view = new DataView(chunk.buffer);
  view.setUint32(0, body.length - 4);
  chunk.set(body, 4);
  view.setUint32(body.length + 4, crc32(body, 0));
  const out = new Uint8Array(png.length + chunk.length);
  out.set(png.subarray(0, end));
  out.set(chunk, end);
  out.set(png.subarray(end), end + chunk.length);
  return out;
}
