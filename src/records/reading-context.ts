import type { Stays } from "./enrolments";
import type { KeyLookup } from "./ids";
import type { Reading } from "./reading";
import type { Children } from "./records";

/** What the tables that follow the children one by one need to know of them. */
export interface ServiceContext {
  readonly reading: Reading;
  readonly child: KeyLookup;
  readonly children: Children;
  readonly stays: Stays;
  /** The area of a text as it is spelled everywhere; null where it is not known. */
  readonly area: (text: string) => string | null;
}
