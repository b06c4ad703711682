import type { DateSystem } from "../src/age/serial";

/** How dates and blanks leave a function: as a sheet shows them, or as JSON. */
export type DateStyle = "serial" | "iso";

let dateSystem: DateSystem = 1900;
let dateStyle: DateStyle = "serial";

/** Set once by the host, before the first answer; 1900 where it cannot know. */
export function setDateSystem(system: DateSystem): void {
  dateSystem = system;
}

export function currentDateSystem(): DateSystem {
  return dateSystem;
}

export function currentDateStyle(): DateStyle {
  return dateStyle;
}

/** Runs `answer` as JSON has it: ISO dates, serials of the 1900 system in, null for blank and for not estimable. */
export function inJson<Result>(answer: () => Result): Result {
  const before = { dateSystem, dateStyle };
  dateSystem = 1900;
  dateStyle = "iso";
  try {
    return answer();
  } finally {
    ({ dateSystem, dateStyle } = before);
  }
}
