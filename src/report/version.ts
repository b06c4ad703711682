/** The version that every report carries; the same as in package.json, which a test checks. */
export const VERSION = "0.1.0";
