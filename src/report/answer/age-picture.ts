import type { Skill } from "../../records/records";
import type { AgeCurve } from "../report";
import { bandPoints, curvePoints } from "../sheets/curve-points";
import { windowInWords } from "../sheets/skill-words";
import type { SeriesPoint } from "../sheets/point-series";
import type { CurvePicture, PictureLine } from "./picture";

/** The age when a skill was met: its expected window as a band, the curve, and the likely range of the age of half. */
export interface AgeFigure {
  readonly skill: Skill;
  readonly curve: AgeCurve;
  readonly half: number;
  readonly lower: number | null;
  readonly upper: number | null;
}

export function agePicture({ skill, curve, half, lower, upper }: AgeFigure): CurvePicture {
  const points = curvePoints(curve);
  const ages = points.map(([months]) => months);
  const min = Math.min(0, Math.floor(Math.min(...ages) / 3) * 3);
  const max = Math.ceil((Math.max(...ages, skill.closesMonths ?? 0) + 0.5) / 6) * 6;
  const range = lower === null || upper === null ? "" : `, likely ${lower.toFixed(1)} to ${upper.toFixed(1)}`;
  return {
    kind: "curve",
    title: skill.label,
    altText: `${skill.label}: a line of the share of children who met it by each age in months; half by ${half.toFixed(1)}${range}. Expected window ${windowInWords(skill)}, as a band.`,
    lines: [
      ...windowBand(skill, max - min),
      line("Share met", points, "line"),
      ...(lower === null || upper === null
        ? []
        : [
            line(
              "Likely range of half",
              [
                [lower, 0.5],
                [upper, 0.5],
              ],
              "edge",
            ),
          ]),
      line("Half", [[half, 0.5]], "point"),
    ],
    x: { title: "", min, max, step: max - min > 18 ? 6 : 3, format: "number" },
    y: { title: "", min: 0, max: 1, step: 0.5, format: "wholeShare" },
    legend: "none",
  };
}

/** Where the source gives no opening none is made up: a line at the close. */
function windowBand({ opensMonths, closesMonths }: Skill, axisMonths: number): PictureLine[] {
  if (closesMonths === null) return [];
  if (opensMonths !== null) return [line("Expected window", bandPoints(opensMonths, closesMonths, axisMonths), "band")];
  return [
    line(
      "Expected by",
      [
        [closesMonths, 0],
        [closesMonths, 1],
      ],
      "dottedLine",
    ),
  ];
}

function line(name: string, points: readonly SeriesPoint[], look: PictureLine["look"]): PictureLine {
  return { name, points, look };
}
