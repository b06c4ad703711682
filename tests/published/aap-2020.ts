/**
 * Ages at which screening is recommended, months since birth.
 * Source: Lipkin and Macias (2020), Promoting optimal development, Pediatrics 145(1):e20193449, abstract (read).
 */
export const GENERAL_SCREENING: readonly number[] = [9, 18, 30];
export const AUTISM_SCREENING: readonly number[] = [18, 24];
/** Ages of routine visits, from 2 to 36 months. From memory of the schedule of preventive care that the same policy builds on. */
export const ROUTINE_VISITS: readonly number[] = [2, 4, 6, 9, 12, 15, 18, 24, 30, 36];
