/** One line of the result: what stands against what, and whether the aim is reached. */
export interface Row {
  /** In words: the job, at which size, against what. */
  readonly compared: string;
  /** What was seen, such as "41 times faster"; null where it could not be run. */
  readonly seen: string | null;
  readonly aim: string;
  /** Null where nothing was measured. */
  readonly reached: boolean | null;
  /** The two times behind it, or why it did not run. */
  readonly detail: string;
}

/** How many times faster ours is. */
export function timesFaster(compared: string, oursMs: number, theirsMs: number, aim: number): Row {
  const ratio = theirsMs / oursMs;
  return {
    compared,
    seen: `${amount(ratio)} times faster`,
    aim: `at least ${amount(aim)} times`,
    reached: ratio >= aim,
    detail: `${milliseconds(oursMs)} against ${milliseconds(theirsMs)}`,
  };
}

/** A number that should stay at or under a limit. */
export function atMost(compared: string, value: number, limit: number, unit: string, detail: string): Row {
  return {
    compared,
    seen: `${amount(value)}${unit}`,
    aim: `at most ${amount(limit)}${unit}`,
    reached: value <= limit,
    detail,
  };
}

/** Two results that must be the same. */
export function same(compared: string, equal: boolean, detail: string): Row {
  return { compared, seen: equal ? "equal" : "different", aim: "equal", reached: equal, detail };
}

export function notRun(compared: string, aim: string, why: string): Row {
  return { compared, seen: null, aim, reached: null, detail: why };
}

export function amount(value: number): string {
  const digits = value === 0 || Math.abs(value) >= 100 ? 0 : Math.abs(value) >= 10 ? 1 : 2;
  if (value !== 0 && Math.abs(value) < 0.01) return value.toExponential(1);
  return value.toFixed(digits).replace(/\B(?=(\d{3})+(?!\d))/g, value >= 1000 ? "," : "");
}

export function milliseconds(value: number): string {
  return value >= 1000 ? `${amount(value / 1000)} s` : `${amount(value)} ms`;
}
