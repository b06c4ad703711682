import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";

interface Axe {
  readonly run: (context: unknown, options: unknown) => Promise<{ violations: { id: string; impact: string }[] }>;
}

const AXE = readFileSync("node_modules/axe-core/axe.min.js", "utf8");

/** The rules that colors alone can break. */
export const OF_COLORS = ["color-contrast", "link-in-text-block"];

/**
 * What axe-core calls serious or critical on a page, less the part that a selector names. Rules that passed are counted for
 * nobody, which halves its work.
 */
export async function seriousFaults(page: Page, exclude?: string, rules?: readonly string[]): Promise<string[]> {
  await page.evaluate(AXE);
  const { violations } = await page.evaluate(
    ([left, only]) =>
      (globalThis as unknown as { axe: Axe }).axe.run(left === null ? document : { exclude: [left] }, {
        resultTypes: ["violations"],
        ...(only && { runOnly: only }),
      }),
    [exclude ?? null, rules ?? null] as const,
  );
  return violations.filter(({ impact }) => impact === "serious" || impact === "critical").map(({ id }) => id);
}
