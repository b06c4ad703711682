import { hasFineDate } from "../../../report/release/fine-dates";
import { privateIn, type PrivateTexts } from "../../../report/release/private-texts";
import { ReleaseRefused } from "./refused";

/** What the texts of a release are held against. */
export interface ScanRules {
  readonly privateTexts: PrivateTexts;
  /** Texts with dates that may stand. */
  readonly allowedDates: readonly string[];
  /** ISO: the only day that a file may say it was made on. */
  readonly asOf: string;
}

/** @throws {ReleaseRefused} where a text of the part carries something of the records, or a date finer than the quarter */
export function scanText(part: string, text: string, { privateTexts, allowedDates }: ScanRules): void {
  const found = privateIn(text, privateTexts);
  if (found !== null) throw new ReleaseRefused(part, found, CHANGE_LABEL);
  if (hasFineDate(text, allowedDates)) throw new ReleaseRefused(part, "a date finer than the quarter", CHANGE_LABEL);
}

/** Texts of the records come into a release by its labels alone. */
const CHANGE_LABEL = "change the label that carries it, of a skill, area, site, source, outcome or group";
