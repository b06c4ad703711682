import type { AxisOut } from "../../workbook/sheets";
import { counted } from "../../words/numbers";
import type { BarPicture } from "../answer/picture";
import { countAxis } from "../sheets/count-axis";
import { type Bridge, bridgeInWords, partHeading } from "./bridges";

/** Parts that are a smaller share of the figure would not be seen on a scale that starts at zero. */
const SMALL_SHARE = 0.25;
const MARKS = 4;

/** A figure earlier, what it gained and lost part by part, and later. Each part begins where the one before it ends. */
export function bridgePicture(bridge: Bridge, days: { readonly earlier: string; readonly later: string }): BarPicture {
  const steps = stepsOf(bridge);
  const levels = [bridge.earlier, bridge.later, ...steps.flatMap(({ from, to }) => [from, to])];
  return {
    kind: "column stacked",
    title: `${bridge.subject.charAt(0).toUpperCase()}${bridge.subject.slice(1)}`,
    altText: `A bridge from ${days.earlier} to ${days.later}. ${bridgeInWords(bridge)}.`,
    parts: [
      { name: "Below", look: "clear", guide: true },
      { name: "Figure", look: "solid" },
      { name: "More", look: "striped" },
      { name: "Fewer", look: "hollow" },
    ],
    bars: [
      { label: `${days.earlier}: ${counted(bridge.earlier)}`, values: [0, bridge.earlier, 0, 0] },
      ...steps.map(({ label, from, to }) => ({
        label,
        values: [Math.min(from, to), 0, Math.max(0, to - from), Math.max(0, from - to)],
      })),
      { label: `${days.later}: ${counted(bridge.later)}`, values: [0, bridge.later, 0, 0] },
    ],
    x: { title: "" },
    y: axisOf(Math.min(...levels), Math.max(...levels)),
    legend: "none",
  };
}

interface Step {
  readonly label: string;
  readonly from: number;
  readonly to: number;
}

function stepsOf({ earlier, parts, isFromReport }: Bridge): Step[] {
  let level = earlier;
  return parts.map(({ part, change }) => {
    const from = level;
    level += change;
    const sign = change > 0 ? "+" : "−";
    return { label: `${partHeading(part, isFromReport)} ${sign}${counted(Math.abs(change))}`, from, to: level };
  });
}

function axisOf(least: number, most: number): AxisOut {
  if (most === 0 || least < (1 - SMALL_SHARE) * most || most - least < MARKS) return countAxis("", most, MARKS);
  const step = Math.ceil((most - least) / (MARKS - 1));
  const min = Math.max(0, Math.floor(least / step) * step - step);
  const max = Math.ceil((most - min) / step) * step + min;
  return { title: "The scale does not start at 0", min, max, step, format: "number" };
}
