import type { Page } from "playwright-core";

const MOST_TABS = 200;

/** Goes to a control by Tab alone. Its words are its text or, where it has none, its label. */
export async function tabTo(page: Page, name: string | RegExp): Promise<void> {
  for (let tabs = 0; tabs < MOST_TABS; tabs += 1) {
    await page.keyboard.press("Tab");
    const text = await page.evaluate(wordsInFocus);
    if (typeof name === "string" ? text === name : name.test(text)) return;
  }
  throw new Error(`no Tab reaches ${String(name)}`);
}

/** Goes to a button by Tab alone, and presses it. */
export async function press(page: Page, name: string | RegExp): Promise<void> {
  await tabTo(page, name);
  await page.keyboard.press("Enter");
}

function wordsInFocus(): string {
  const focused = document.activeElement;
  const isField = [HTMLInputElement, HTMLSelectElement, HTMLTextAreaElement].some((kind) => focused instanceof kind);
  if (isField) return (focused as HTMLInputElement).labels?.[0]?.textContent ?? "";
  return focused?.textContent ?? "";
}
