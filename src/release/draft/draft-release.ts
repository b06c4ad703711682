import { RELEASABLE_IDS } from "../../tables/catalogue";
import type { AgeEstimates } from "../../tables/estimates";
import type { ReleasableId } from "../../tables/table";
import type { DraftTable } from "../release-table";
import type { CountSystem } from "../system";
import { checkSystem } from "./check-system";
import { type Drafting, definitionOf, draftingOf } from "./drafting";
import { EverFollowed } from "./ever-followed";
import { tiePopulations } from "./across-populations";
import { tieBands } from "./across-bands";
import { tieSkills } from "./across-skills";
import { tieLeft } from "./across-left";
import { draftAgeWhenMet } from "./age-when-met";
import { AttainedCells } from "./attained-cells";
import type { BoxCells } from "./box-cells";
import type { Standing } from "./box-tally";
import { draftRatings } from "./ratings";
import { draftReferralSteps } from "./referral-steps";
import { draftReferrals } from "./referrals";
import { draftTrend } from "./trend";
import { draftMetByBand, draftMetByBandLeft, followedCells, leftCells, leftStanding } from "./met-by-band";
import { draftReachedByAge } from "./reached-by-age";
import { withRowsThatAreThere } from "./row-presence";
import { weighed } from "./weigh";

/** Tables on their way out, with everything that an outsider could work out from them. */
export interface DraftRelease {
  readonly drafts: readonly DraftTable[];
  readonly system: CountSystem;
  /** 0% and 100% of a group, in words for whoever releases; never part of what leaves. */
  readonly flags: readonly string[];
  /** Canonical text of the settings that change what is counted. */
  readonly definition: string;
  readonly drafting: Drafting;
}

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
  const unknown = tables.filter((id) => !RELEASABLE_IDS.some((each) => each === id));
  if (unknown.length > 0) {
    throw new RangeError(`${unknown.join(", ")} cannot be released. These can: ${RELEASABLE_IDS.join(", ")}.`);
  }
  const drafting = draftingOf(estimates, families);
  const drafts = new Drafts(drafting).of(RELEASABLE_IDS.filter((id) => tables.includes(id)));
  const system = withRowsThatAreThere(weighed(drafting.builder.system(), drafts), drafts);
  checkSystem(system);
  return { drafts, system, flags: drafting.flags, definition: definitionOf(estimates.context.settings), drafting };
}

/** What several tables share is counted once. */
class Drafts implements Record<ReleasableId, () => DraftTable> {
  private followed: BoxCells | null = null;
  private attained: AttainedCells | null = null;
  private ever: EverFollowed | null = null;
  private left: BoxCells | null = null;
  private standing: Standing | null = null;

  constructor(private readonly drafting: Drafting) {}

  of(tables: readonly ReleasableId[]): DraftTable[] {
    const drafts = tables.map((id) => this[id]());
    tiePopulations(this.drafting, tables);
    if (tables.includes("referrals")) tieBands(this.drafting, { followed: this.followed, left: this.left });
    if (this.followed && this.attained && this.ever) {
      tieSkills(this.drafting, this.followed, this.attained, this.ever);
    }
    if (this.attained && this.ever && this.left && this.standing) {
      tieLeft(this.drafting, this.left, this.standing, this.attained, this.ever, this.followed);
    }
    return drafts;
  }

  "met-by-band"(): DraftTable {
    this.followed = followedCells(this.drafting);
    return draftMetByBand(this.drafting, this.followed);
  }

  "met-by-band-left"(): DraftTable {
    this.standing = leftStanding(this.drafting);
    this.left = leftCells(this.drafting, this.standing);
    return draftMetByBandLeft(this.drafting, this.left);
  }

  "reached-by-age"(): DraftTable {
    return draftReachedByAge(this.drafting, this.everFollowed());
  }

  "age-when-met"(): DraftTable {
    this.attained = new AttainedCells(this.drafting, this.everFollowed());
    return draftAgeWhenMet(this.drafting, this.everFollowed(), this.attained);
  }

  referrals(): DraftTable {
    return draftReferrals(this.drafting);
  }

  "referral-steps"(): DraftTable {
    return draftReferralSteps(this.drafting);
  }

  ratings(): DraftTable {
    return draftRatings(this.drafting);
  }

  trend(): DraftTable {
    return draftTrend(this.drafting, this.followed !== null);
  }

  private everFollowed(): EverFollowed {
    this.ever ??= new EverFollowed(this.drafting);
    return this.ever;
  }
}
