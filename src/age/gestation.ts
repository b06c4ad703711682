import { LONGEST_GESTATION_DAYS, SHORTEST_GESTATION_DAYS } from "./correction";

/** How a bare decimal such as 28.3 is read: 28 weeks 3 days, or 28.3 weeks. */
export type GestationDecimals = "days" | "weeks";

export type Gestation =
  | { readonly kind: "blank" }
  | { readonly kind: "days"; readonly days: number }
  /** A bare decimal whose meaning nothing has settled. */
  | { readonly kind: "undecided" }
  | { readonly kind: "illegal" };

/**
 * A gestational age from any accepted notation: `28+3`, `28w3d`, `28w`, `28 3/7`, whole weeks (20 to 45), whole days
 * (140 to 321), or a bare decimal when `decimals` says how to read it. Whole weeks count as that many weeks and 0 days.
 */
export function parseGestation(cell: string | number | null, decimals: GestationDecimals | null): Gestation {
  if (cell === null) return { kind: "blank" };
  const text = String(cell).normalize("NFKC").trim().toLowerCase().replace("⁄", "/");
  if (text === "") return { kind: "blank" };
  if (/^\d+(\.0*)?$/.test(text)) return fromWhole(Number.parseFloat(text));
  if (isBareDecimal(text)) return fromDecimal(text.replace(",", "."), decimals);
  return fromWeeksAndDays(text);
}

/** True for `28.3` or `28,3`: the notation that a whole column has to explain. */
export function isBareDecimal(text: string): boolean {
  return /^\d+[.,]\d+$/.test(text) && !/^\d+[.,]0+$/.test(text);
}

/**
 * What one bare decimal proves about its column: a second decimal, or a digit 7 to 9, cannot be a number of days.
 * Gives "weeks", or null where it proves nothing.
 */
export function decimalEvidence(text: string): GestationDecimals | null {
  const fraction = text.split(/[.,]/)[1] ?? "";
  return fraction.replace(/0+$/, "").length > 1 || /^[789]/.test(fraction) ? "weeks" : null;
}

/** A pregnancy is dated so that the due date is its 280th day. Source: ACOG Committee Opinion 700 (2017), "Methods for Estimating the Due Date". */
const DUE_DAY = 280;

/** Days of gestation at birth: 280 less the days from birth to the due date. */
export function gestationFromDueDate(birth: number, dueDate: number): Gestation {
  return legal(DUE_DAY - (dueDate - birth));
}

/** The same from weeks early, such as `8`, `8+2` or `8 weeks`: 40 weeks less so many. */
export function gestationFromWeeksEarly(cell: string | number | null): Gestation {
  if (cell === null) return { kind: "blank" };
  const text = String(cell).normalize("NFKC").trim().toLowerCase();
  if (text === "") return { kind: "blank" };
  const match = /^(\d{1,2})(?:[.,]0*)?\s*(?:w(?:(?:ee)?ks?)?\.?)?(?:\s*\+?\s*([0-6])\s*(?:d(?:ays?)?)?)?$/.exec(text);
  return match ? legal(DUE_DAY - Number(match[1]) * 7 - Number(match[2] ?? 0)) : { kind: "illegal" };
}

function fromWhole(value: number): Gestation {
  return legal(value >= 100 ? value : value * 7);
}

function fromDecimal(text: string, decimals: GestationDecimals | null): Gestation {
  if (decimals === null) return { kind: "undecided" };
  if (decimals === "weeks") return legal(Math.round(Number(text) * 7));
  const [weeks, days] = text.split(".");
  return /^[0-6]0*$/.test(days ?? "") ? legal(Number(weeks) * 7 + Number((days as string)[0])) : { kind: "illegal" };
}

function fromWeeksAndDays(text: string): Gestation {
  const match =
    /^(\d{1,3})\s*\+\s*(\d)(?:\s*\/\s*7)?$/.exec(text) ??
    /^(\d{1,3})\s*w(?:(?:ee)?ks?)?\.?(?:\s*(\d)\s*d(?:ays?)?)?$/.exec(text) ??
    /^(\d{1,3})\s+(\d)\s*\/\s*7$/.exec(text);
  if (!match) return /^(\d{3})\s*d(?:ays?)?$/.test(text) ? legal(Number.parseInt(text, 10)) : { kind: "illegal" };
  const days = Number(match[2] ?? 0);
  return days <= 6 ? legal(Number(match[1]) * 7 + days) : { kind: "illegal" };
}

function legal(days: number): Gestation {
  const inRange = days >= SHORTEST_GESTATION_DAYS && days <= LONGEST_GESTATION_DAYS;
  return inRange ? { kind: "days", days } : { kind: "illegal" };
}
