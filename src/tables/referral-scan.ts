import { monthLabel, monthOf } from "../cohort/person-time";
import { scan, type ScannedWindow } from "../statistics/scan";
import type { TableContext } from "./context";
import { type ScannedReferral, scannedReferrals } from "./referral-scan-input";
import { apart } from "./referral-scan-windows";
import type { Table, TableColumn } from "./table";
import { plural } from "../words/numbers";

const COLUMNS: readonly TableColumn[] = [
  { key: "place", label: "Place", unit: "text" },
  { key: "area", label: "Area", unit: "text" },
  { key: "firstMonth", label: "First month", unit: "text" },
  { key: "lastMonth", label: "Last month", unit: "text" },
  { key: "observed", label: "Referrals", unit: "count" },
  { key: "expected", label: "Expected", unit: "number" },
  { key: "ratio", label: "Observed / expected", unit: "number" },
  { key: "logLikelihoodRatio", label: "Log-likelihood ratio", unit: "number" },
  { key: "p", label: "p for all windows together", unit: "number" },
  { key: "pSameMonths", label: "p, each referral keeping its month", unit: "number" },
];

const REPLICATES = 999;
/** Windows listed, none of which shares a referral with one above it. */
const LISTED = 10;
export const EVERY_AREA = "all";

/** Where and when referrals came thicker than the program's own rates by age give (METHOD.md, section 6). */
export function referralScan(context: TableContext): Table<"referral-scan"> {
  const { asOf, settings } = context;
  const { input, rows, places, areas, firstMonth } = scannedReferrals(context);
  const maxWidth = Math.floor(settings.scanMonths / 2);
  const found = scan(input, { maxWidth, replicates: REPLICATES, seed: settings.seed });
  const listed = apart(found.windows, rows, LISTED);
  const nameOf = (window: ScannedWindow) =>
    [
      places[window.place] as string,
      window.layer === 0 ? EVERY_AREA : (areas[window.layer - 1] as string),
      monthLabel(firstMonth + window.first),
      monthLabel(firstMonth + window.last),
    ] as const;
  return {
    id: "referral-scan",
    title: "Where referrals clustered",
    population: `Children in the program from ${monthLabel(firstMonth)} to ${monthLabel(monthOf(asOf))}, up to the as-of date, and the referrals made on such a day`,
    columns: COLUMNS,
    rows: listed.map(({ window }) => [
      ...nameOf(window),
      window.observed,
      window.expected,
      window.observed / window.expected,
      window.logLikelihoodRatio,
      window.p,
      window.pFiner,
    ]),
    notes: [
      ...notesOf(found.windowCount, maxWidth, settings.seed),
      ...listed.flatMap(({ window, rows: own }) => severalNote(nameOf(window), own)),
    ],
  };
}

/** A window is less of a surprise where one child stands behind several of its referrals. */
function severalNote([place, area, first, last]: readonly string[], rows: readonly ScannedReferral[]): string[] {
  const children = new Set(rows.map(({ child }) => child)).size;
  if (children === rows.length) return [];
  return [
    `${place}, ${area}, ${first} to ${last}: ${rows.length} referrals of ${plural(children, "child", "children")}. Several referrals of one child are counted one by one.`,
  ];
}

function notesOf(windowCount: number, maxWidth: number, seed: number): string[] {
  return [
    `${windowCount} windows were compared: one place, or one place and area, by up to ${maxWidth} consecutive months. p is for all of them together: the chance that any window differs as much where nothing clusters. A p under 0.05 is rare; one alone of several listed windows may have it.`,
    `Expected is what the program's own rates by age group (of the area, where one is named) give in the child-months of the window. ${REPLICATES} repeated draws give every referral, with its areas and age group, a place and month by chance, in proportion to the child-months of that age group (seed ${seed}). p = (r + 1) / (${REPLICATES} + 1), where r draws have a log-likelihood ratio as large as the window's.`,
    `In the second p each referral keeps its month too, and only its place is left to chance, as the child-months of its age group and month lie. A small one says that a place differs from the others in the same months. A large one does not show a season: where sites are few, a cluster in one of them raises what is expected there.`,
    `At most ${LISTED} windows are listed, the most likely first. None has a referral of one above it, whatever the area. Area "${EVERY_AREA}" counts a referral once, whatever areas it names.`,
    "Nothing is expected in months without children in the program. The edges of a window are the best guess, and a month more or less is often nearly as likely.",
    "A cluster is a question: a new referrer, a screening day, a therapist who checks closely or a caught-up list makes one as readily as a change in the children.",
  ];
}
