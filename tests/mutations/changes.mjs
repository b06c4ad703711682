/** Small wrong changes of a source text: a comparison, a sign, a bound, an order, a step left out. Each is made alone. */
import ts from "typescript";

const K = ts.SyntaxKind;

/** What an operator is turned into. */
const OPERATORS = new Map([
  [K.LessThanToken, ["comparison", "<="]],
  [K.LessThanEqualsToken, ["comparison", "<"]],
  [K.GreaterThanToken, ["comparison", ">="]],
  [K.GreaterThanEqualsToken, ["comparison", ">"]],
  [K.EqualsEqualsEqualsToken, ["comparison", "!=="]],
  [K.ExclamationEqualsEqualsToken, ["comparison", "==="]],
  [K.PlusToken, ["sign", "-"]],
  [K.MinusToken, ["sign", "+"]],
  [K.AsteriskToken, ["sign", "/"]],
  [K.SlashToken, ["sign", "*"]],
  [K.PlusEqualsToken, ["sign", "-="]],
  [K.MinusEqualsToken, ["sign", "+="]],
  [K.AmpersandAmpersandToken, ["comparison", "||"]],
  [K.BarBarToken, ["comparison", "&&"]],
]);

/** What a method is turned into; null: the call is left out. */
const METHODS = new Map([
  ["sort", ["order", null]],
  ["reverse", ["order", null]],
  ["find", ["order", "findLast"]],
  ["findLast", ["order", "find"]],
  ["findIndex", ["order", "findLastIndex"]],
  ["findLastIndex", ["order", "findIndex"]],
  ["min", ["bound", "max"]],
  ["max", ["bound", "min"]],
  ["floor", ["bound", "ceil"]],
  ["ceil", ["bound", "floor"]],
  ["some", ["step", "every"]],
  ["every", ["step", "some"]],
  ["filter", ["step", null]],
]);

/** Every change that can be made: its kind, where it starts and ends, and what stands there afterwards. */
export function changesIn(text, fileName = "source.ts") {
  const source = ts.createSourceFile(fileName, text, ts.ScriptTarget.Latest, true, scriptKindOf(fileName));
  const found = [];
  const add = (kind, from, to, now) => {
    const line = source.getLineAndCharacterOfPosition(from).line + 1;
    found.push({ kind, from, to, now, line, was: text.slice(from, to) });
  };
  const visit = (node) => {
    if (ts.isTypeNode(node) || ts.isImportDeclaration(node) || ts.isInterfaceDeclaration(node)) return;
    changesAt(node, source, add);
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}

export function changed(text, { from, to, now }) {
  return text.slice(0, from) + now + text.slice(to);
}

function changesAt(node, source, add) {
  const start = node.getStart(source);
  if (ts.isBinaryExpression(node)) {
    const operator = node.operatorToken;
    const turned = OPERATORS.get(operator.kind);
    if (turned) add(turned[0], operator.getStart(source), operator.end, turned[1]);
  }
  if (ts.isPrefixUnaryExpression(node) && [K.ExclamationToken, K.MinusToken].includes(node.operator))
    add(node.operator === K.MinusToken ? "sign" : "comparison", start, node.operand.getStart(source), "");
  if (ts.isNumericLiteral(node) && !isKey(node)) add("bound", start, node.end, String(Number(node.text) + 1));
  if (ts.isCallExpression(node) && ts.isPropertyAccessExpression(node.expression)) methodAt(node, source, add);
  if (ts.isExpressionStatement(node)) add("step", start, node.end, ";");
  if (ts.isIfStatement(node) && !node.elseStatement) add("step", start, node.end, ";");
  if (ts.isConditionalExpression(node)) {
    add("comparison", start, node.end, `${node.whenTrue.getText(source)}`);
    add("comparison", start, node.end, `${node.whenFalse.getText(source)}`);
  }
}

function methodAt({ expression, end }, source, add) {
  const turned = METHODS.get(expression.name.text);
  if (!turned) return;
  const [kind, now] = turned;
  if (now === null) add(kind, expression.expression.end, end, "");
  else add(kind, expression.name.getStart(source), expression.name.end, now);
}

function isKey(node) {
  return ts.isPropertyAssignment(node.parent) && node.parent.name === node;
}

function scriptKindOf(fileName) {
  return fileName.endsWith("x") ? ts.ScriptKind.TSX : ts.ScriptKind.TS;
}
