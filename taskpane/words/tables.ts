export const INTERNAL_WARNING =
  "Internal: each row is about a single child. Keep it inside the program; it is never part of a release.";
