export type SampleArea = "gross motor" | "fine motor" | "social-emotional" | "cognitive" | "speech" | "sensory";

/** A skill of the sample's list: a row of the Skills table, and the shape from which invented ages are drawn. */
export interface SampleSkill {
  readonly id: string;
  readonly label: string;
  readonly area: SampleArea;
  readonly opensMonths: number | null;
  readonly closesMonths: number | null;
  /** Blank means corrected. */
  readonly ageBasis: "" | "corrected" | "chronological";
  readonly expectedShare: number | null;
  /** The skill that gives way to this one, or is part of it; "" for none. */
  readonly follows: string;
  readonly tryTogether: string;
  readonly sense: "" | "hearing" | "seeing";
  readonly basis: string;
  readonly ages: AgeShape;
  /** Skills that come first in every invented child, beside the one that it follows. */
  readonly after: readonly string[];
  /** True where children now and then stop doing it. */
  readonly losable: boolean;
}

/** Invented ages of attainment: a normal curve with one width below its middle and another above, months. */
export interface AgeShape {
  readonly middleMonths: number;
  readonly widthBelowMonths: number;
  readonly widthAboveMonths: number;
}

export interface Extra {
  readonly follows?: string;
  readonly after?: readonly string[];
  readonly ageBasis?: "corrected" | "chronological";
  readonly sense?: "hearing" | "seeing";
  readonly losable?: boolean;
  /** Middle and width of the invented ages, where the usual ones would put the skill before one that leads to it. */
  readonly ages?: readonly [middle: number, width: number];
}

export const WHO_BASIS = "WHO MGRS 2006, Acta Paediatr Suppl 450:86-95: 1st to 99th percentile";
export const CDC_BASIS = "CDC 2022 / Zubler et al., Pediatrics 2022;149(3):e2021052138: age by which 75% or more do it";
export const COMMON_BASIS = "common practice, no source";

/** Normal deviates of the shares 0.99 and 0.85 (any normal table). */
const Z99 = 2.3263;
const Z85 = 1.0364;
/** Width of the invented curves where a source gives one age only, as a share of that age. */
const USUAL_WIDTH = 0.15;

/** A window published as 1st to 99th percentile, with the mean published beside it as the middle of the curve. */
export function who(
  id: string,
  label: string,
  window: readonly [opens: number, mean: number, closes: number],
  tryTogether: string,
  extra: Extra = {},
): SampleSkill {
  const [opens, mean, closes] = window;
  const ages = {
    middleMonths: mean,
    widthBelowMonths: (mean - opens) / Z99,
    widthAboveMonths: (closes - mean) / Z99,
  };
  return {
    ...blank(id, label, tryTogether, extra),
    area: "gross motor",
    opensMonths: opens,
    closesMonths: closes,
    ageBasis: "corrected",
    expectedShare: 0.99,
    basis: WHO_BASIS,
    ages,
  };
}

/** An age by which 75% or more do it. No opening is published, so none is given. */
export function cdc(
  area: SampleArea,
  id: string,
  label: string,
  closes: number,
  tryTogether: string,
  extra: Extra = {},
): SampleSkill {
  return {
    ...blank(id, label, tryTogether, extra),
    area,
    closesMonths: closes,
    expectedShare: 0.75,
    basis: CDC_BASIS,
    ages: usualAges(closes, extra),
  };
}

/** An age around which people look for the skill, known from practice alone. */
export function around(
  area: SampleArea,
  id: string,
  label: string,
  months: number,
  tryTogether: string,
  extra: Extra = {},
): SampleSkill {
  return {
    ...blank(id, label, tryTogether, extra),
    area,
    closesMonths: months,
    basis: `${COMMON_BASIS}: looked for around ${months} months`,
    ages: usualAges(months, extra),
  };
}

/** "75% or more" is a floor: 85% of the invented children do it by the age. */
function usualAges(months: number, extra: Extra): AgeShape {
  const width = months * USUAL_WIDTH;
  const [middleMonths, ownWidth] = extra.ages ?? [months - width * Z85, width];
  return { middleMonths, widthBelowMonths: ownWidth, widthAboveMonths: ownWidth };
}

function blank(id: string, label: string, tryTogether: string, extra: Extra) {
  return {
    id,
    label,
    opensMonths: null,
    expectedShare: null,
    ageBasis: extra.ageBasis ?? "",
    follows: extra.follows ?? "",
    after: extra.after ?? [],
    sense: extra.sense ?? "",
    losable: extra.losable ?? false,
    tryTogether,
  } as const;
}
