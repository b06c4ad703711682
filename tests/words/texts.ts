import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import ts from "typescript";

/** A text that a person reads, and where it is written. */
export interface Text {
  readonly at: string;
  readonly text: string;
}

const PAGES = [
  "README.md",
  "src/METHOD.md",
  "functions/FUNCTIONS.md",
  "src/FINDINGS.md",
  "src/REFERENCE.md",
  "sample-workbooks/README.md",
];
const CODE = ["src", "functions", "taskpane"];
/** The invented program: what children do, in everyday words, and the faults planted on purpose. */
const INVENTED = "src/sample";

/** The pages, a paragraph, list item or row each, without what is written as code. */
export function pageTexts(): Text[] {
  return PAGES.flatMap((page) => {
    const source = readFileSync(page, "utf8")
      .replace(/^ {4}.*$/gm, "")
      .replace(/```[\s\S]*?```/g, "");
    return source.split(/\n\s*\n|\n(?=\s*[-|#>])/).map((text) => ({
      at: page,
      text: text
        .replace(/`[^`]*`/g, "…")
        .replace(/\s+/g, " ")
        .trim(),
    }));
  });
}

/** Strings and templates of the code that have a space in them, and the doc comments that Excel shows. */
export function codeTexts(): Text[] {
  return CODE.flatMap(filesUnder).flatMap((file) => {
    const source = ts.createSourceFile(file, readFileSync(file, "utf8"), ts.ScriptTarget.Latest, true);
    const found: Text[] = [];
    visit(source, (node, text) => {
      const { line } = source.getLineAndCharacterOfPosition(node.getStart(source));
      found.push({ at: `${file}:${line + 1}`, text: text.replace(/\s+/g, " ").trim() });
    });
    return [...found, ...shownByExcel(file, source.text)].filter(({ text }) => /\S \S/.test(text));
  });
}

/** The doc comments of worksheet functions, a line each: Excel shows them while a formula is typed. */
function shownByExcel(file: string, source: string): Text[] {
  return [...source.matchAll(/\/\*\*(?:(?!\*\/)[\s\S])*?@customfunction[\s\S]*?\*\//g)].flatMap(
    ({ 0: comment, index }) =>
      comment.split("\n").map((line, at) => ({
        at: `${file}:${source.slice(0, index).split("\n").length + at}`,
        text: line.replace(/^[\s/*]+(@\w+ ?)?/, "").trim(),
      })),
  );
}

function visit(node: ts.Node, tell: (node: ts.Node, text: string) => void): void {
  if (isForProgrammers(node)) return;
  if (ts.isStringLiteral(node) || ts.isNoSubstitutionTemplateLiteral(node) || ts.isJsxText(node)) tell(node, node.text);
  if (ts.isTemplateExpression(node))
    tell(node, [node.head.text, ...node.templateSpans.map(({ literal }) => literal.text)].join("…"));
  ts.forEachChild(node, (child) => visit(child, tell));
}

/** Imports, types, and the messages of a caller's mistake. */
function isForProgrammers(node: ts.Node): boolean {
  if (ts.isImportDeclaration(node) || ts.isExportDeclaration(node) || ts.isTypeNode(node)) return true;
  return ts.isNewExpression(node) && ["RangeError", "Error", "TypeError"].includes(node.expression.getText());
}

function filesUnder(folder: string): string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const name = path.join(folder, entry.name);
    if (entry.isDirectory()) return name === INVENTED ? [] : filesUnder(name);
    return /\.tsx?$/.test(entry.name) ? [name] : [];
  });
}

/** The sentences of a text. */
export function sentencesOf(text: string): string[] {
  return text.split(/(?<=[.!?;])\s+|(?<=:)\s+(?=[A-Z"“…*])/);
}
