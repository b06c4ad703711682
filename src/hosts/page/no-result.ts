/** Shown where a file holds a formula without its result, and read back as that. */
export const NO_RESULT = "(formula without a result)";
