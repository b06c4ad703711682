import type { Page } from "playwright-core";

/** The job without the test looking on: a watcher's own tasks would be counted. */
export async function makeUnwatched(page: Page): Promise<void> {
  await page.evaluate(async () => {
    const find = (kind: string, text: string) =>
      [...document.querySelectorAll<HTMLElement>(kind)].find((each) => each.textContent?.includes(text));
    const until = async <T>(look: () => T | undefined): Promise<T> => {
      for (;;) {
        const found = look();
        if (found) return found;
        await new Promise((resolve) => setTimeout(resolve, 200));
      }
    };
    find("button", "Read the workbook")?.click();
    await until(() => find("[role=status]", "Read: "));
    find("button", "Quarter")?.click();
    (await until(() => find("button", "the end of that quarter"))).click();
    await until(() => document.querySelector<HTMLInputElement>("input[type=date]")?.value);
    find("button", "Make the report")?.click();
    await until(() => find("h2", "What the report says"));
  });
}
