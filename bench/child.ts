import { spawnSync } from "node:child_process";

/** What a process of its own adds to its answer: the time from its start to its end, and the most memory it took. */
export interface Measured {
  readonly ms: number;
  /** The time of the job alone, without the start of Node. */
  readonly jobMs: number;
  readonly peakMegabytes: number;
}

/** Runs one job in a process of its own, cold, and gives its answer with the whole time that the process took. */
export async function inChild<T>(job: string, ...words: readonly string[]): Promise<T & Measured> {
  const started = performance.now();
  const { status, stdout } = spawnSync(process.execPath, [process.argv[1]!, `job:${job}`, ...words], {
    encoding: "utf8",
    maxBuffer: 1 << 28,
    stdio: ["ignore", "pipe", "inherit"],
  });
  const ms = performance.now() - started;
  if (status !== 0) throw new Error(`the process for ${job} failed`);
  return { ms, ...(JSON.parse(stdout) as T & Omit<Measured, "ms">) };
}

/** The other side of it: prints the answer of a job. */
export async function answer(run: () => Promise<object>): Promise<void> {
  const started = performance.now();
  const result = await run();
  const jobMs = performance.now() - started;
  process.stdout.write(JSON.stringify({ ...result, jobMs, peakMegabytes: process.resourceUsage().maxRSS / 1024 }));
}
