import type { AgeEstimates } from "../../tables/estimates";
import type { DraftTable } from "../release-table";
import type { CountSystem } from "../system";
import { checkSystem } from "./check-system";
import { type Drafting, definitionOf, draftingOf } from "./drafting";
import { EverFollowed } from "./ever-followed";
import { draftMetByBand, draftMetByBandLeft, followedCells } from "./met-by-band";
import { draftReachedByAge } from "./reached-by-age";

/** Tables on their way out, with everything that an outsider could work out from them. */
export interface DraftRelease {
  readonly drafts: readonly DraftTable[];
  readonly system: CountSystem;
  /** 0% and 100% of a group, in words for whoever releases; never part of what leaves. */
  readonly flags: readonly string[];
  /** Canonical text of the settings that change what is counted. */
  readonly definition: string;
}

/** Tables that may be released, in the order in which they are drafted. */
export const RELEASABLE = ["met-by-band", "met-by-band-left", "reached-by-age"] as const;
type Releasable = (typeof RELEASABLE)[number];

/**
 * The tables asked for as drafts over one system of counts (METHOD.md, section 7).
 *
 * @param families - one code a child, "" where none is recorded: children of one family count as one contributor
 * @throws {RangeError} when a table is asked for that may not be released, or counts do not add up
 */
export function draftRelease(
  estimates: AgeEstimates,
  tables: readonly string[],
  families: readonly string[],
): DraftRelease {
  const unknown = tables.filter((id) => !RELEASABLE.some((each) => each === id));
  if (unknown.length > 0) {
    throw new RangeError(`${unknown.join(", ")} cannot be released. These can: ${RELEASABLE.join(", ")}.`);
  }
  const drafting = draftingOf(estimates, families);
  const drafts = new Drafts(drafting).of(RELEASABLE.filter((id) => tables.includes(id)));
  const system = drafting.builder.system();
  checkSystem(system);
  return { drafts, system, flags: drafting.flags, definition: definitionOf(estimates.context.settings) };
}

/** What several tables share is counted once. */
class Drafts {
  private followed: ReturnType<typeof followedCells> | null = null;
  private ever: EverFollowed | null = null;

  constructor(private readonly drafting: Drafting) {}

  of(tables: readonly Releasable[]): DraftTable[] {
    return tables.map((id) => this[id]());
  }

  private "met-by-band"(): DraftTable {
    this.followed ??= followedCells(this.drafting);
    return draftMetByBand(this.drafting, this.followed);
  }

  private "met-by-band-left"(): DraftTable {
    return draftMetByBandLeft(this.drafting).draft;
  }

  private "reached-by-age"(): DraftTable {
    this.ever ??= new EverFollowed(this.drafting);
    return draftReachedByAge(this.drafting, this.ever);
  }
}
