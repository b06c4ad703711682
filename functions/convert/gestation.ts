import { decimalEvidence, type GestationDecimals, isBareDecimal, parseGestation } from "../../src/age/gestation";
import { invalid, outOfRange } from "../failure";
import { type InCell, isEmpty, rangeOf } from "./cells";

const FORMS = "28+3, 28w3d, 28w, 28 3/7, whole weeks, or days";

/**
 * Reads the cells of one argument as days of gestation, null where empty (0 too). What a bare decimal means, the whole
 * argument decides.
 */
export function gestationReader(argument: unknown): (cell: InCell) => number | null {
  const decimals = evidenceOf(argument);
  return (cell) => {
    if (isEmpty(cell)) return null;
    if (typeof cell === "boolean") throw invalid(`gestation cannot be read: write it as ${FORMS}.`);
    const read = parseGestation(cell, decimals);
    if (read.kind === "days") return read.days;
    if (read.kind === "undecided") {
      throw invalid("gestation may mean weeks and days, or weeks with a decimal: write it as 28+3.");
    }
    throw isOnlyOutOfRange(cell as string | number)
      ? outOfRange("gestation is out of range: 20 weeks 0 days to 45 weeks 6 days, or 140 to 321 days.")
      : invalid(`gestation cannot be read: write it as ${FORMS}.`);
  };
}

function evidenceOf(argument: unknown): GestationDecimals | null {
  const texts = rangeOf(argument, "gestation").flatMap((row) => row.map((cell) => String(cell ?? "").trim()));
  return texts.some((text) => isBareDecimal(text) && decimalEvidence(text) === "weeks") ? "weeks" : null;
}

/** True where the form is right, so that other weeks or days in its place could be read. */
function isOnlyOutOfRange(cell: string | number): boolean {
  const text = String(cell).trim();
  return ["30", "300"].some((inRange) => parseGestation(text.replace(/^\d+/, inRange), "weeks").kind === "days");
}
