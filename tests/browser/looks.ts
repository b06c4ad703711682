import type { Page } from "playwright-core";
import { OF_COLORS, seriousFaults } from "./axe";

interface Look {
  readonly name: string;
  readonly media?: Parameters<Page["emulateMedia"]>[0];
  readonly size?: { readonly width: number; readonly height: number };
  /** What else changes with the look; all rules where left out. */
  readonly rules?: readonly string[];
}

/** WCAG 2.2, 1.4.10: 320 pixels without scrolling in two directions, which is what zooming leaves of a window. */
const LOOKS: readonly Look[] = [
  { name: "light" },
  { name: "dark", media: { colorScheme: "dark" }, rules: OF_COLORS },
  { name: "forced colors", media: { forcedColors: "active" }, rules: OF_COLORS },
  { name: "320 pixels", size: { width: 320, height: 720 } },
  { name: "320 pixels, zoomed to 200%", size: { width: 320, height: 360 } },
];

/**
 * What is wrong with a page as it stands, in each look: what axe-core calls serious, less the part that a selector names, and
 * a page that scrolls sideways. The page changes its look as it is, as it does when a person changes it in the system.
 */
export async function faultsInEveryLook(page: Page, exclude?: string): Promise<string[]> {
  const usual = page.viewportSize();
  const faults: string[] = [];
  for (const { name, media, size, rules } of LOOKS) {
    await page.emulateMedia({ colorScheme: "light", forcedColors: "none", reducedMotion: "reduce", ...media });
    if (size ?? usual) await page.setViewportSize((size ?? usual)!);
    await standsStill(page);
    for (const fault of await seriousFaults(page, exclude, rules)) faults.push(`${name}: ${fault}`);
    const sideways = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
    if (sideways > 0) faults.push(`${name}: scrolls ${sideways} pixels sideways`);
  }
  await page.emulateMedia({ colorScheme: "light", forcedColors: "none", reducedMotion: "reduce" });
  if (usual) await page.setViewportSize(usual);
  return faults;
}

/** Colors that are still on their way from one to the other are no colors to judge. */
async function standsStill(page: Page): Promise<void> {
  await page.evaluate(() => new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve))));
  await page.waitForFunction(() => document.getAnimations().every(({ playState }) => playState !== "running"));
}
