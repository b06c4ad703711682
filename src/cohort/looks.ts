import type { Observations } from "../records/records";
import { gatherParcels, type Parcels, unpackLook } from "./parcels";

/** Every look, sorted by child and then by day, as columns: the order in which all tables are made in one pass. */
export interface Looks {
  /** Looks of child c stand from `offsets[c]` up to, not including, `offsets[c + 1]`. */
  readonly offsets: Uint32Array;
  readonly skill: Uint16Array;
  readonly day: Int32Array;
  readonly result: Uint8Array;
  readonly exact: Uint8Array;
  /** Index into the observers; -1 where none is named. */
  readonly observer: Int32Array;
}

/**
 * Sorts by child and then by day with counting sorts; looks of one day keep the order of the sheet.
 *
 * The looks are first gathered into parcels of neighbouring children, small enough for the processor's cache: sorted in one
 * go, ten million looks in any order would each wait for the memory.
 */
export function sortLooks(observations: Observations, childCount: number): Looks {
  const offsets = startOfEachChild(observations.child, childCount);
  const looks = blankLooks(offsets, observations.child.length);
  const parcels = gatherParcels(observations, offsets);
  const sorter = new ParcelSorter(parcels, looks);
  for (let parcel = 0; parcel + 1 < parcels.starts.length; parcel += 1) sorter.sort(parcel);
  return looks;
}

function startOfEachChild(child: Int32Array, childCount: number): Uint32Array {
  const offsets = new Uint32Array(childCount + 1);
  for (let row = 0; row < child.length; row += 1) offsets[(child[row] as number) + 1]! += 1;
  for (let index = 0; index < childCount; index += 1) offsets[index + 1]! += offsets[index] as number;
  return offsets;
}

function blankLooks(offsets: Uint32Array, count: number): Looks {
  return {
    offsets,
    skill: new Uint16Array(count),
    day: new Int32Array(count),
    result: new Uint8Array(count),
    exact: new Uint8Array(count),
    observer: new Int32Array(count).fill(-1),
  };
}

/** Sorts one parcel after the other by day, then by child into its place among the looks; both sorts are stable. */
class ParcelSorter {
  private readonly byDay: Int32Array;
  private readonly nextOfDay: Uint32Array;
  private readonly nextOfChild: Uint32Array;

  constructor(
    private readonly parcels: Parcels,
    private readonly looks: Looks,
  ) {
    const largest = parcels.starts.reduce(
      (most, start, at) => Math.max(most, start - (parcels.starts[at - 1] ?? 0)),
      0,
    );
    this.byDay = new Int32Array(largest * parcels.width);
    this.nextOfDay = new Uint32Array(Math.max(0, parcels.lastDay - parcels.firstDay) + 2);
    this.nextOfChild = looks.offsets.slice();
  }

  sort(parcel: number): void {
    const from = (this.parcels.starts[parcel] as number) * this.parcels.width;
    const to = (this.parcels.starts[parcel + 1] as number) * this.parcels.width;
    if (from === to) return;
    this.startDays(from, to);
    this.orderByDay(from, to);
    const firstChild = parcel << this.parcels.childBits;
    if (this.parcels.width === 2) this.placeByChild(to - from, firstChild);
    else this.placeWithObserver(to - from, firstChild);
  }

  private startDays(from: number, to: number): void {
    const { rows, width, firstDay } = this.parcels;
    const next = this.nextOfDay.fill(0);
    for (let at = from; at < to; at += width) next[(rows[at] as number) - firstDay + 1]! += 1;
    for (let day = 1; day < next.length; day += 1) next[day]! += next[day - 1] as number;
  }

  private orderByDay(from: number, to: number): void {
    const { rows, width, firstDay } = this.parcels;
    const { byDay, nextOfDay } = this;
    for (let at = from; at < to; at += width) {
      const day = rows[at] as number;
      const place = nextOfDay[day - firstDay]!++ * width;
      byDay[place] = day;
      byDay[place + 1] = rows[at + 1] as number;
      if (width === 3) byDay[place + 2] = rows[at + 2] as number;
    }
  }

  private placeByChild(length: number, firstChild: number): void {
    const { byDay, nextOfChild } = this;
    const { day, skill, result, exact } = this.looks;
    for (let at = 0; at < length; at += 2) {
      const packed = byDay[at + 1] as number;
      const place = nextOfChild[firstChild + unpackLook.child(packed)]!++;
      day[place] = byDay[at] as number;
      skill[place] = unpackLook.skill(packed);
      result[place] = unpackLook.result(packed);
      exact[place] = unpackLook.exact(packed);
    }
  }

  private placeWithObserver(length: number, firstChild: number): void {
    const { byDay, nextOfChild } = this;
    const { day, skill, result, exact, observer } = this.looks;
    for (let at = 0; at < length; at += 3) {
      const packed = byDay[at + 1] as number;
      const place = nextOfChild[firstChild + unpackLook.child(packed)]!++;
      day[place] = byDay[at] as number;
      skill[place] = unpackLook.skill(packed);
      result[place] = unpackLook.result(packed);
      exact[place] = unpackLook.exact(packed);
      observer[place] = byDay[at + 2] as number;
    }
  }
}
