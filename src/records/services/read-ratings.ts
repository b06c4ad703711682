import type { Counted } from "../headings/count-blocks";
import { NO_DAY, type Ratings } from "../records";
import { progressCategory, type RatingScale } from "./progress-category";
import { yesNo } from "./read-referrals";
import { dateRefusal, readServiceRows, type Refusal, type ServiceContext, type ServiceRow } from "./service-rows";
import { type RatingRow, RATINGS, ratingRowOf } from "../tables/ratings";
import { keyOf, oneSpelling } from "../cells/words";

/** Reads Ratings: an exit after the as-of date stands as not yet rated. */
export function readRatings(context: ServiceContext, blocks: readonly Counted[]): Ratings {
  const { ratingLevels: levels, peerLevel } = context.reading.settings;
  const scale: RatingScale = { levels, peerLevel };
  const rows = readServiceRows(context, blocks, RATINGS, ratingRowOf(scale.levels), (row) => refuse(context, row));
  const exits = rows.map((row) => isRated(context, row));
  listTwice(rows);
  rows.forEach((row, i) => {
    if (exits[i]) listContradiction(row, scale);
  });
  const exited = <T>(of: (row: RatingRow) => T | null, otherwise: T) =>
    rows.map((row, i) => (exits[i] ? (of(row.value) ?? otherwise) : otherwise));
  return {
    child: Int32Array.from(rows, (row) => row.child),
    outcome: oneSpelling(rows.map((row) => row.value.outcome)),
    entryDay: Int32Array.from(rows, (row) => row.value.entryDate ?? NO_DAY),
    entryRating: Uint8Array.from(rows, (row) => row.value.entryRating ?? 0),
    exitDay: Int32Array.from(exited((row) => row.exitDate, NO_DAY)),
    exitRating: Uint8Array.from(exited((row) => row.exitRating, 0)),
    newSinceEntry: Int8Array.from(exited((row) => yesNo(row.newSinceEntry), -1)),
  };
}

function refuse(context: ServiceContext, row: ServiceRow<RatingRow>): Refusal {
  const { entryDate, exitDate } = row.value;
  const entry = entryDate === null ? null : dateRefusal(context, row, entryDate, "entryDate");
  return entry ?? (exitDate !== null && exitDate < row.birth ? ["date-before-birth", "exitDate"] : null);
}

function isRated(context: ServiceContext, row: ServiceRow<RatingRow>): boolean {
  const { asOf } = context.reading.settings;
  const { exitDate } = row.value;
  if (asOf === null || exitDate === null || exitDate <= asOf) return true;
  row.remark("step-after-as-of", "exitDate");
  return false;
}

function listContradiction(row: ServiceRow<RatingRow>, scale: RatingScale): void {
  const { entryRating, exitRating, newSinceEntry } = row.value;
  if (entryRating === null || exitRating === null || entryRating === 0 || exitRating === 0) return;
  if (newSinceEntry === "no" && exitRating > entryRating) row.remark("rating-impossible", "newSinceEntry");
  if (newSinceEntry === null && progressCategory(entryRating, exitRating, null, scale) === "a or b")
    row.remark("new-since-entry-blank", "newSinceEntry");
}

function listTwice(rows: readonly ServiceRow<RatingRow>[]): void {
  const seen = new Set<string>();
  for (const row of rows) {
    const key = JSON.stringify([row.child, keyOf(row.value.outcome)]);
    if (seen.has(key)) row.remark("rating-twice", "outcome");
    seen.add(key);
  }
}
