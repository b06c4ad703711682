/**
 * `_x000D_` stands for the character of that number, and `_x005F_` for the underscore that would begin such an escape.
 * Source: ECMA-376 Part 1, 22.4.2.4 (bstr) and 22.9.2.19 (ST_Xstring).
 */
export function unescaped(text: string): string {
  if (!text.includes("_x")) return text;
  return text.replace(/_x([0-9A-Fa-f]{4})_/g, (_, code: string) => String.fromCharCode(parseInt(code, 16)));
}
