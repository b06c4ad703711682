/** Calendar arithmetic by walking: one day or one month at a time. Slow on purpose, and of no other code's making. */
interface Ymd {
  readonly y: number;
  readonly m: number;
  readonly d: number;
}

const DAYS: string[] = [];
const PLACE = new Map<string, number>();
for (let day: Ymd = { y: 1990, m: 1, d: 1 }; day.y < 2070; day = nextDay(day)) {
  PLACE.set(isoOf(day), DAYS.length);
  DAYS.push(isoOf(day));
}

export function daysBetween(from: string, to: string): number {
  return place(to) - place(from);
}

export function addDays(day: string, days: number): string {
  const moved = DAYS[place(day) + days];
  if (moved === undefined) throw new RangeError(`addDays: ${day} and ${days} days leave the calendar`);
  return moved;
}

/** The same day of the month n months on, or the month's last day where it has no such day. */
export function addMonths(day: string, months: number): string {
  const { y, m, d } = ymdOf(day);
  let year = y;
  let month = m;
  for (let left = months; left > 0; left -= 1) {
    month += 1;
    if (month > 12) [year, month] = [year + 1, 1];
  }
  for (let left = months; left < 0; left += 1) {
    month -= 1;
    if (month < 1) [year, month] = [year - 1, 12];
  }
  return isoOf({ y: year, m: month, d: Math.min(d, monthLength(year, month)) });
}

export function firstDayOfQuarter(day: string): string {
  const { y, m } = ymdOf(day);
  return isoOf({ y, m: m <= 3 ? 1 : m <= 6 ? 4 : m <= 9 ? 7 : 10, d: 1 });
}

function place(day: string): number {
  const found = PLACE.get(day);
  if (found === undefined) throw new RangeError(`"${day}" is no day of 1990 to 2069`);
  return found;
}

function nextDay({ y, m, d }: Ymd): Ymd {
  if (d < monthLength(y, m)) return { y, m, d: d + 1 };
  return m < 12 ? { y, m: m + 1, d: 1 } : { y: y + 1, m: 1, d: 1 };
}

function monthLength(y: number, m: number): number {
  if (m === 2) return isLeap(y) ? 29 : 28;
  return m === 4 || m === 6 || m === 9 || m === 11 ? 30 : 31;
}

function isLeap(y: number): boolean {
  return y % 400 === 0 || (y % 4 === 0 && y % 100 !== 0);
}

function isoOf({ y, m, d }: Ymd): string {
  return `${y}-${String(m).padStart(2, "0")}-${String(d).padStart(2, "0")}`;
}

function ymdOf(day: string): Ymd {
  const [y = 0, m = 0, d = 0] = day.split("-").map(Number);
  return { y, m, d };
}
