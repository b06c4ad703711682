import { randomFrom } from "../../src/statistics/random";
import { scan, type ScanInput, type ScanStratum } from "../../src/statistics/scan";
import { plainScan } from "../plain-scan";
import { type Row, same, timesFaster } from "../row";
import { timed } from "../timing";

/** All referrals and six areas, seven sites, two years of months. */
const SHAPE = { layers: 7, places: 7, periods: 24 };
const OPTIONS = { maxWidth: 12, replicates: 999, seed: 20240229 };
const REFERRALS = 600;
const BANDS = 4;
/** Of a hundred referrals so many name a second area. */
const SECOND_AREA = 30;

/** 999 replicates of every window, against the same written as plain loops. */
export async function againstPlainScan(): Promise<Row[]> {
  const input = inventedReferrals();
  const ours = await timed(() => scan(input, OPTIONS), 9, 3);
  const theirs = await timed(() => plainScan(input, OPTIONS), 5, 0);
  const compared = `The scan, ${OPTIONS.replicates} replicates of ${ours.result.windowCount.toLocaleString("en")} windows, against plain loops`;
  const { windows } = ours.result;
  const equal =
    windows.length === theirs.result.length &&
    windows.every((window) => {
      const { layer, place, first, last } = window;
      const other = theirs.result.find(
        (each) => each.layer === layer && each.place === place && each.first === first && each.last === last,
      );
      return other?.p === window.p && Math.abs(other.ratio - window.logLikelihoodRatio) < 1e-9;
    });
  return [
    timesFaster(compared, ours.ms, theirs.ms, 100),
    same("every window, its ratio and its p", equal, `${windows.length} windows with more than expected`),
  ];
}

/** Referrals thrown over sites and months by child-months that differ from band to band, some naming two areas. */
function inventedReferrals(): ScanInput {
  const random = randomFrom(7);
  const cells = SHAPE.places * SHAPE.periods;
  const weights = Array.from({ length: BANDS }, () =>
    Float64Array.from({ length: cells }, () => 200 + random.nextInt(800)),
  );
  const strata = new Map<string, { draws: number; weights: Float64Array; layers: number[] }>();
  const observed = new Int32Array(SHAPE.layers * cells);
  for (let referral = 0; referral < REFERRALS; referral += 1) {
    const band = random.nextInt(BANDS);
    const areas = new Set([1 + random.nextInt(SHAPE.layers - 1)]);
    if (random.nextInt(100) < SECOND_AREA) areas.add(1 + random.nextInt(SHAPE.layers - 1));
    const layers = [0, ...areas].sort((a, b) => a - b);
    const key = JSON.stringify([band, layers]);
    const stratum = strata.get(key) ?? { draws: 0, weights: weights[band]!, layers };
    strata.set(key, { ...stratum, draws: stratum.draws + 1 });
    const cell = random.nextInt(cells);
    for (const layer of layers) observed[layer * cells + cell]! += 1;
  }
  return { shape: SHAPE, observed, strata: [...strata.values()] satisfies ScanStratum[] };
}
