import type { WorkbookIn } from "../../../workbook/workbook";

export type DateSystem = WorkbookIn["dateSystem"];

/** The grid counts days from 1900 alone: what is added to a date of a workbook that counts from 1904, and taken off again. */
export const DATE_SHIFT: Readonly<Record<DateSystem, number>> = { 1900: 0, 1904: 1462 };
