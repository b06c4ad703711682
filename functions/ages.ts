import { bandIndex, bandLabel } from "../src/age/bands";
import { inCells } from "./answer";
import { ageCell, correctionUntil, UNCORRECTED, unitOf } from "./convert/age-cell";
import { isBlank, isEmpty } from "./convert/cells";
import { edgesOf } from "./convert/edges";
import { gestationReader } from "./convert/gestation";
import { spread } from "./convert/spread";
import { numberFrom } from "./convert/values";

/**
 * Age counted from birth.
 * @customfunction AGE
 * @cancelable
 * @param birth Birth date, or a column of them
 * @param on The day the age is asked for
 * @param [unit] "months" (usual), "completed", "weeks", "days" or "text"
 * @returns The age, in the unit asked for
 */
export function age(birth: any[][], on: any[][], unit?: any): any[][] {
  return inCells(() => {
    const asked = unitOf(unit);
    return spread({ birth, on }, (cells) =>
      isEmpty(cells.birth) ? null : ageCell(cells.birth, cells.on, null, UNCORRECTED, asked),
    );
  });
}

/**
 * Age counted from the day the baby was due, for babies born before 37 weeks.
 * @customfunction CORRECTEDAGE
 * @cancelable
 * @param birth Birth date, or a column of them
 * @param gestation Weeks at birth, such as 28+3; blank means term
 * @param on The day the age is asked for
 * @param [unit] "months" (usual), "completed", "weeks", "days" or "text"
 * @param [until] Months at which correcting stops; 24 when left out
 * @returns The age, in the unit asked for
 */
export function correctedAge(birth: any[][], gestation: any[][], on: any[][], unit?: any, until?: any): any[][] {
  return inCells(() => {
    const [asked, rule, gestationDays] = [unitOf(unit), correctionUntil(until), gestationReader(gestation)];
    return spread({ birth, gestation, on }, (cells) =>
      isEmpty(cells.birth) && isEmpty(cells.gestation)
        ? null
        : ageCell(cells.birth, cells.on, gestationDays(cells.gestation), rule, asked),
    );
  });
}

/**
 * Weeks of pregnancy at birth, as days.
 * @customfunction GESTATIONDAYS
 * @cancelable
 * @param gestation Such as 28+3, 28w3d, 28 3/7, 28 or 199, or a column of them
 * @returns Days, from 140 to 321
 */
export function gestationDays(gestation: any[][]): any[][] {
  return inCells(() => {
    const days = gestationReader(gestation);
    return spread({ gestation }, (cells) => days(cells.gestation));
  });
}

/**
 * The age group that an age falls in, such as 6 to <9 months.
 * @customfunction AGEBAND
 * @cancelable
 * @param months Age in months, or a column of ages; 0 is a newborn
 * @param [edges] Months at which age groups begin; 0, 3, 6, 9, 12, 18, 24, 36 when left out
 * @returns The name of the age group
 */
export function ageBand(months: any[][], edges?: any[][]): any[][] {
  return inCells(() => {
    const at = edgesOf(edges);
    return spread({ months }, (cells) =>
      isBlank(cells.months) ? null : bandLabel(bandIndex(numberFrom(cells.months, "months"), at), at),
    );
  });
}
