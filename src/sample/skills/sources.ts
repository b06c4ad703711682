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
  /** The skill that this one replaces; "" for none. */
  readonly follows: string;
  readonly tryTogether: string;
  readonly basis: string;
  readonly ages: AgeShape;
}

/** Invented ages of attainment: a normal curve with one width below its middle and another above, months. */
export interface AgeShape {
  readonly middleMonths: number;
  readonly widthBelowMonths: number;
  readonly widthAboveMonths: number;
}

export interface Extra {
  readonly follows?: string;
  readonly ageBasis?: "corrected" | "chronological";
}

export const WHO_BASIS = "WHO MGRS 2006, Acta Paediatr Suppl 450:86-95: 1st to 99th percentile";
export const CDC_BASIS = "CDC 2022 / Zubler et al., Pediatrics 2022;149(3):e2021052138: age by which 75% or more do it";
export const COMMON_BASIS = "common practice, no source";

/** Normal deviates of the shares 0.99, 0.9 and 0.75 (any normal table). */
const Z99 = 2.3263;
const Z90 = 1.2816;
const Z75 = 0.6745;
/** Width of the invented curves where a source gives one age only, as a share of that age. */
const USUAL_WIDTH = 0.13;

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
    ages: threeQuartersBy(closes),
  };
}

/** A span in which most children begin, known from practice alone. */
export function between(
  area: SampleArea,
  id: string,
  label: string,
  window: readonly [opens: number, closes: number],
  tryTogether: string,
  extra: Extra = {},
): SampleSkill {
  const [opens, closes] = window;
  const width = (closes - opens) / 2 / Z90;
  const ages = { middleMonths: (opens + closes) / 2, widthBelowMonths: width, widthAboveMonths: width };
  return {
    ...blank(id, label, tryTogether, extra),
    area,
    opensMonths: opens,
    closesMonths: closes,
    basis: COMMON_BASIS,
    ages,
  };
}

/** An age around which one looks for the skill, known from practice alone. */
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
    ages: threeQuartersBy(months),
  };
}

function threeQuartersBy(months: number): AgeShape {
  const width = months * USUAL_WIDTH;
  return { middleMonths: months - width * Z75, widthBelowMonths: width, widthAboveMonths: width };
}

function blank(id: string, label: string, tryTogether: string, extra: Extra) {
  return {
    id,
    label,
    opensMonths: null,
    expectedShare: null,
    ageBasis: extra.ageBasis ?? "",
    follows: extra.follows ?? "",
    tryTogether,
  } as const;
}
