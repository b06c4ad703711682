/**
 * Centers for Medicare & Medicaid Services, Cell Size Suppression Policy: no value of 1 to 10 may be shown or be derived
 * from what is shown, percentages included; zero may be shown. Read as ResDAC and hhs.gov give it.
 */
export const DEID = {
  cms: {
    values: [0, 1, 10, 11],
    showable: [true, false, false, true],
    /** A total with a part of it shown: the rest can be derived. */
    total: 30,
    shown: 21,
  },
} as const;
