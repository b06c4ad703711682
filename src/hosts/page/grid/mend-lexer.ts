interface LexerInside {
  _squareBracketState: number;
  _tableBracketState: boolean;
  _resetTemp(): void;
}

/**
 * The formula reader of the grid (0.25.1) remembers a square bracket that was open when it last stopped, as happens while
 * someone types `Children[#All]`, and from then on takes no comma of any formula for a separator. It has to forget it, as
 * it does the other brackets.
 */
export function mendLexer(lexer: { readonly prototype: object }): void {
  const inside = lexer.prototype as LexerInside;
  const reset = inside._resetTemp;
  inside._resetTemp = function resetAll(this: LexerInside): void {
    reset.call(this);
    this._squareBracketState = 0;
    this._tableBracketState = false;
  };
}
