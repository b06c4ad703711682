export const INTERNAL_WARNING =
  "Internal: a row stands for a single child. Keep it inside the program; it is never part of a release.";
