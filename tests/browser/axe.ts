import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";

interface Axe {
  readonly run: (context: unknown) => Promise<{ violations: { id: string; impact: string }[] }>;
}

const AXE = readFileSync("node_modules/axe-core/axe.min.js", "utf8");

/** What axe-core calls serious or critical on a page, less the part that a selector names. */
export async function seriousFaults(page: Page, exclude?: string): Promise<string[]> {
  await page.evaluate(AXE);
  const { violations } = await page.evaluate(
    (left) => (globalThis as unknown as { axe: Axe }).axe.run(left === undefined ? document : { exclude: [left] }),
    exclude,
  );
  return violations.filter(({ impact }) => impact === "serious" || impact === "critical").map(({ id }) => id);
}
