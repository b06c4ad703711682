import * as vega from "vega";
import { expressionInterpreter } from "vega-interpreter";
import { compile } from "vega-lite";
import type { Picture } from "../../report/release/pictures";
import { widthInDigits } from "../../report/sheets/text-width";
import { pictureSpec } from "./picture-spec";

/** The picture as SVG text with its message in words, the same on every machine: text is measured by rule, not by a canvas. */
export async function drawPicture(picture: Picture): Promise<string> {
  const measured = measuring.textMetrics.width;
  measuring.textMetrics.width = widthByRule;
  const { spec } = compile(pictureSpec(picture), { logger: vega.logger(vega.None) });
  const view = new vega.View(vega.parse(spec, {}, { ast: true }), { expr: expressionInterpreter, renderer: "none" });
  try {
    return withWords(await view.toSVG(), picture);
  } finally {
    // A host that draws for a screen too measures there as it did.
    measuring.textMetrics.width = measured;
    view.finalize();
  }
}

/** Vega hands this on from its drawing part, and its types leave it out. */
const measuring = vega as unknown as { readonly textMetrics: { width: (item: TextItem, text?: unknown) => number } };

interface TextItem {
  readonly text?: unknown;
  readonly fontSize?: number;
  readonly fontWeight?: unknown;
}

/** Without a canvas Vega guesses widths half as wide again, and leaves a picture half empty. */
function widthByRule({ text: own, fontSize = 11, fontWeight }: TextItem, text: unknown = own): number {
  const lines = Array.isArray(text) ? text : [text];
  const digits = Math.max(...lines.map((line) => widthInDigits(String(line ?? ""))));
  return digits * fontSize * DIGIT_EM * (fontWeight === "bold" ? BOLD : 1);
}

/** The breadth of a digit of Source Sans 3, of its size, and a little air. */
const DIGIT_EM = 0.52;
const BOLD = 1.07;

/** By which a later release knows the file as its own, and may put a new one in its place. */
const DRAWN_BY = "Drawn by Windowline.";

function withWords(svg: string, { title, altText }: Picture): string {
  const head = /^<svg ([^>]*)>/.exec(svg);
  if (!head) throw new Error("drawPicture: the drawing library writes another form of SVG");
  const words = `<title id="title">${escaped(title)}</title><desc id="desc">${escaped(altText)} ${DRAWN_BY}</desc>`;
  const open = `<svg role="img" aria-labelledby="title desc" ${head[1]}>`;
  return `<?xml version="1.0" encoding="UTF-8"?>\n${open}${words}${svg.slice(head[0].length)}\n`;
}

function escaped(text: string): string {
  return text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;");
}
