export type Values = readonly (number | null)[];

/**
 * Values in two columns that take turns at every stop, so that a line through either column never joins the value before a
 * stop to the one after it.
 */
export function runsBetweenStops(values: Values, stops: readonly boolean[]): [odd: Values, even: Values] {
  let runs = 0;
  const runOf = values.map((_, at) => (stops[at] && at > 0 ? (runs += 1) : runs));
  const column = (parity: number) => values.map((value, at) => ((runOf[at] as number) % 2 === parity ? value : null));
  return [column(0), column(1)];
}
