import { readFileSync } from "node:fs";
import { SaxesParser } from "saxes";
import { nodeInflate } from "../../src/hosts/file/node-inflate";
import { USUAL_LIMITS } from "../../src/hosts/file/read/limits";
import { PackageParts } from "../../src/hosts/file/read/package-parts";
import type { Found } from "./found";

/** The same unzipping, every element through saxes, cells into plain columns. */
export async function readWithSaxes(file: string): Promise<Found> {
  const parts = new PackageParts(readFileSync(file), USUAL_LIMITS, nodeInflate);
  const texts: string[] = [];
  await parse(parts, "xl/sharedStrings.xml", sharedTexts(texts));
  const columns: (string | number)[][] = [[], [], [], []];
  await parse(parts, "xl/worksheets/sheet1.xml", sheetCells(texts, columns));
  const [children = [], , dateCells = []] = columns;
  const dates = dateCells.slice(1).reduce((sum: number, each) => sum + Number(each), 0);
  return { rows: children.length, dates, lastChild: String(children[children.length - 1]) };
}

async function parse(parts: PackageParts, part: string, parser: SaxesParser): Promise<void> {
  const decoder = new TextDecoder();
  await parts.read(part, (piece) => void parser.write(decoder.decode(piece, { stream: true })));
  parser.close();
}

function sharedTexts(texts: string[]): SaxesParser {
  const parser = new SaxesParser();
  let text = "";
  parser.on("opentag", (tag) => {
    if (tag.name === "si") text = "";
  });
  parser.on("text", (piece) => (text += piece));
  parser.on("closetag", (tag) => {
    if (tag.name === "si") texts.push(text);
  });
  return parser;
}

function sheetCells(texts: readonly string[], columns: (string | number)[][]): SaxesParser {
  const parser = new SaxesParser();
  let column = 0;
  let isText = false;
  let value = "";
  parser.on("opentag", (tag) => {
    if (tag.name === "c") {
      column = String(tag.attributes["r"]).charCodeAt(0) - 65;
      isText = tag.attributes["t"] === "s";
    } else if (tag.name === "v") value = "";
  });
  parser.on("text", (piece) => (value += piece));
  parser.on("closetag", (tag) => {
    if (tag.name === "v") columns[column]?.push(isText ? texts[Number(value)]! : Number(value));
  });
  return parser;
}
