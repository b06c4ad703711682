/// <reference types="office-js" />
import type { DateSystem } from "../../age/serial";
import { PATIENT, type Patience, readInExcel } from "./run";

/** How the workbook counts days, so that the worksheet functions can be told before their first answer. */
export function readDateSystem(patience: Patience = PATIENT): Promise<DateSystem> {
  return readInExcel(async (context) => {
    const first = firstDayOf1904(context);
    await context.sync();
    return dateSystemOf(first);
  }, patience);
}

/** Office.js has no property for the date system: Excel itself is asked for the serial of the first day of 1904. */
export function firstDayOf1904(context: Excel.RequestContext): Excel.FunctionResult<number> {
  const result = context.workbook.functions.date(1904, 1, 1);
  result.load("value");
  return result;
}

/** Source: ECMA-376 Part 1, 18.17.4.1: the day is 0 in the 1904 system, 1462 in the 1900 system. */
export function dateSystemOf(firstDay: Excel.FunctionResult<number>): DateSystem {
  return firstDay.value === 0 ? 1904 : 1900;
}
