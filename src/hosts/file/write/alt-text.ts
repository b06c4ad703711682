/** Excel's limit, as rust_xlsxwriter documents it (from memory); the writing library drops a longer text without a word. */
const LONGEST = 255;
const MORE = " \u2026 (goes on in the cells below the numbers)";

/** As much of a chart's message as its alternative text holds, cut between clauses, and where the rest stands. */
export function altTextThatFits(text: string): string {
  if (text.length <= LONGEST) return text;
  const room = text.slice(0, LONGEST - MORE.length);
  const end = Math.max(room.lastIndexOf("; "), room.lastIndexOf(". "));
  return (end > 0 ? room.slice(0, end) : room) + MORE;
}
