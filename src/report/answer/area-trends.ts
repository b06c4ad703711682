import { capital, counted, shareOf } from "../../words/numbers";
import { quarterInWords } from "../../words/dates";
import type { Report } from "../report";
import { areaLines, type GroupLine } from "../sheets/trend-lines";
import { runsBetweenStops } from "../sheets/trend-runs";
import { isProvisional } from "../sheets/sentences/trend";
import { tableOf } from "./finding";
import type { BarPicture } from "./picture";

export interface AreaTrend {
  readonly area: string;
  readonly picture: BarPicture;
}

/** One line per area: of the up-to-date skill checks at the end of each quarter, the share met. Groups are added up. */
export function areaTrends(report: Report): readonly AreaTrend[] {
  const table = tableOf(report, "trend");
  const quarters = report.print.trend?.quarters ?? [];
  if (!table) return [];
  const labels = quarters.map(({ quarter }) => quarter);
  const stops = quarters.map(({ correctionStops }) => correctionStops > 0);
  const areas = areaLines(table, labels).map(({ area, groups }) => ({ area, cells: addedUp(groups) }));
  const least = Math.min(...areas.flatMap(({ cells }) => cells.map(({ met, of }) => (of === 0 ? 1 : met / of))));
  const min = least < 0.5 ? 0 : 0.5;
  return areas.map(({ area, cells }) => {
    const shares = cells.map(({ met, of }) => (of === 0 ? null : met / of));
    const last = isProvisional(table) ? shares.length - 1 : -1;
    const [odd, even] = runsBetweenStops(
      shares.map((share, at) => (at === last ? null : share)),
      stops,
    );
    const latest = cells.at(-1);
    const title =
      latest && latest.of > 0 ? `${capital(area)}: ${counted(latest.met)} of ${counted(latest.of)}` : capital(area);
    return {
      area,
      picture: {
        kind: "line" as const,
        title,
        altText: `${capital(area)}: of up-to-date skill checks, met at the end of ${labels.map((label, at) => `${quarterInWords(label)} ${shareOf(cells[at]?.met ?? 0, cells[at]?.of ?? 0)}`).join("; ")}.`,
        parts: [
          { name: "Share met", look: "joined" as const },
          { name: "Share met, after correcting stopped for some", look: "joined" as const, continues: true },
          { name: "Share met, provisional", look: "lightPoint" as const, continues: true },
        ],
        bars: labels.map((label, at) => ({
          label: label.slice(2).replace("-", " "),
          values: [odd[at] ?? null, even[at] ?? null, at === last ? (shares[at] ?? null) : null],
        })),
        told: [
          {
            name: "Met, of up-to-date skill checks",
            values: cells.map(({ met, of }) => `${counted(met)} of ${counted(of)}`),
          },
        ],
        x: { title: "", labelEvery: 2 },
        y: { title: "", min, max: 1, step: 0.25, format: "wholeShare" as const },
        legend: "none" as const,
      },
    };
  });
}

function addedUp(groups: readonly GroupLine[]): { met: number; of: number }[] {
  return (groups[0]?.cells ?? []).map((_, at) => ({
    met: groups.reduce((sum, { cells }) => sum + (cells[at]?.met ?? 0), 0),
    of: groups.reduce((sum, { cells }) => sum + (cells[at]?.of ?? 0), 0),
  }));
}
