/**
 * Lets Vega measure text in a worker, where it looks for a document's canvas in vain and guesses widths half as wide
 * again: it is given the worker's own canvas instead.
 */
const scope = globalThis as { document?: unknown; OffscreenCanvas?: new (width: number, height: number) => unknown };
const { OffscreenCanvas: Canvas } = scope;
if (Canvas && scope.document === undefined) scope.document = { createElement: () => new Canvas(1, 1) };

export {};
