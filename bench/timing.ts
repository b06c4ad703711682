export const ROUNDS = 5;

/** The median time of some rounds after others that only warm up, and the last result. */
export async function timed<T>(
  run: () => T | Promise<T>,
  rounds = ROUNDS,
  warming = 2,
): Promise<{ ms: number; result: T }> {
  for (let round = 0; round < warming; round += 1) await run();
  const times: number[] = [];
  let result: T | undefined;
  for (let round = 0; round < rounds; round += 1) {
    result = undefined;
    const started = performance.now();
    result = await run();
    times.push(performance.now() - started);
  }
  return { ms: median(times), result: result as T };
}

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}
