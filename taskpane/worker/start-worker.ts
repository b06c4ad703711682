import { config } from "zod";
import type { ToWorker } from "./messages";
import { serve } from "./serve";
import { Work } from "./work";

// zod compiles its checks with `Function` where it may; the page's policy forbids that, and asking would be reported.
config({ jitless: true });

const CHANGELOG = new URL("../../CHANGELOG.md", import.meta.url);

const work = new Work({
  writeFile: async (sheets, created) => (await import("./write-file")).writeFile(sheets, created),
  readFile: async (bytes) => (await import("./read-file")).readFile(bytes),
  drawChart: async (chart, width) => (await import("./charts/draw-chart")).drawChart(chart, width),
  readChangelog: async () => (await fetch(CHANGELOG)).text(),
  loadReleases: async () => {
    const { Releases } = await import("./release/releases");
    return new Releases({
      loadSolver: async () => (await import("../../functions/elsewhere/load-solver")).loadSolver(),
      fileOf: async (...made) => (await import("./release/release-files")).fileOf(...made),
    });
  },
});

const scope = globalThis as unknown as {
  onmessage: ((event: MessageEvent<ToWorker>) => void) | null;
  postMessage: (message: unknown, transfer: ArrayBuffer[]) => void;
};

scope.onmessage = ({ data }) =>
  void serve(work, data, (message, transfer = []) => scope.postMessage(message, transfer));
