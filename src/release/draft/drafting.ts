import { isoOf } from "../../age/day";
import type { Settings } from "../../settings/settings";
import { echoSettings, type SettingName, settingsThatBearOn, usualSettings } from "../../settings/settings";
import type { TableContext } from "../../tables/context";
import type { AgeEstimates } from "../../tables/estimates";
import { SystemBuilder } from "./builder";
import { type Families, familiesOf } from "./families";
import { type Scopes, scopesOf } from "./scopes";

/** What the drafts of all tables of one release share. */
export interface Drafting {
  readonly estimates: AgeEstimates;
  readonly context: TableContext;
  readonly builder: SystemBuilder;
  readonly families: Families;
  readonly scopes: Scopes;
  /** Settings that change an age, and those that change what a look says, where they are not the usual ones. */
  readonly tags: { readonly ages: string; readonly looks: string; readonly both: string; readonly attained: string };
  /** Skills as keys name them. */
  readonly skills: readonly string[];
  /** Places where nobody or everybody of a group has something. */
  readonly flags: string[];
}

export function draftingOf(estimates: AgeEstimates, families: readonly string[]): Drafting {
  const { context } = estimates;
  if (families.length !== context.cohort.ids.length) throw new RangeError("draftRelease: one family a child");
  const tag = (names: readonly SettingName[]) => tagOf(context.settings, names);
  return {
    estimates,
    context,
    builder: new SystemBuilder(context.settings.minimumCell),
    families: familiesOf(families),
    scopes: scopesOf(context.groups),
    tags: {
      ages: tag(AGE_SETTINGS),
      looks: tag(LOOK_SETTINGS),
      both: tag(COUNT_SETTINGS),
      attained: tag(ATTAINED_SETTINGS),
    },
    skills: context.cohort.skills.map((_, skill) => skillSubject(context, skill)),
    flags: [],
  };
}

const AGE_SETTINGS = settingsThatBearOn("ages");
const LOOK_SETTINGS = settingsThatBearOn("met", "boxes");
const ATTAINED_SETTINGS = [...new Set([...AGE_SETTINGS, ...settingsThatBearOn("met")])];
const COUNT_SETTINGS = [...new Set([...AGE_SETTINGS, ...LOOK_SETTINGS])];

/** Canonical text of every setting that changes what is counted. */
export function definitionOf(settings: Settings): string {
  const echo = echoSettings(settings);
  const names = [...COUNT_SETTINGS, ...settingsThatBearOn("entry", "groups")];
  return names.map((name) => `${name}=${JSON.stringify(echo[name])}`).join(" ");
}

/** `2026-07-01` and `2026-09-30`, as places name the dates. */
export function isoDates({ from, asOf }: TableContext): { readonly from: string; readonly asOf: string } {
  return { from: isoOf(from), asOf: isoOf(asOf) };
}

function tagOf(settings: Settings, names: readonly SettingName[]): string {
  const [echo, usual] = [echoSettings(settings), echoSettings(usualSettings)];
  return names.flatMap((name) => (echo[name] === usual[name] ? [] : [`${name}=${String(echo[name])}`])).join(" ");
}

/** A skill with the age that its bands are read on and the skills that replace it: these change what is counted. */
function skillSubject({ cohort }: TableContext, skill: number): string {
  const { id, ageBasis } = cohort.skills[skill]!;
  const replacedBy = cohort.skills.filter(({ follows }) => follows === skill).map((each) => each.id);
  const tail = replacedBy.length === 0 ? "" : ` replaced by ${replacedBy.sort().join(", ")}`;
  return `skill ${id} (${ageBasis}${tail})`;
}
