import type { Records } from "../../records/records";
import type { Settings } from "../../settings/settings";
import { bandLabel } from "../../age/bands";
import type { Table } from "../table";
import { type Choice, choiceOf, choiceText, combinationsOf, dimensionsOf } from "./choices";
import { type CheckedChoice, type DefinitionCheck, Evaluator } from "./evaluate";
import { type Figure, isShare } from "./figure";
import { checkNotes } from "./words";

/** As a table of results is shaped; it is made for one figure, and is none of the tables of a report. */
export type DefinitionCheckTable = Omit<Table, "id"> & { readonly id: "definition-check" };

/**
 * How firm a figure is (METHOD.md, section 6).
 *
 * @returns a reason where the figure is not there under the run's own definitions
 * @throws {RangeError} without an as-of date
 */
export function definitionCheck(
  records: Records,
  settings: Settings,
  figure: Figure,
): DefinitionCheck | { readonly reason: string } {
  const usual = usualChoice(settings, figure);
  if (usual === null)
    return { reason: `No age group is called "${figure.band}". They are ${groupsOf(settings).join(", ")}.` };
  const dimensions = dimensionsOf(figure.table, figure.column, usual);
  const evaluator = new Evaluator(records, settings, figure);
  const [first, ...others] = combinationsOf(dimensions);
  const checked = (combination: readonly number[]): CheckedChoice => ({
    text: choiceText(dimensions, combination),
    combination,
    ...evaluator.evaluate(choiceOf(dimensions, combination, usual)),
  });
  const own = checked(first as readonly number[]);
  if (own.value === null)
    return { reason: "The figure is empty under the settings of this run: nothing can be compared with it." };
  return { figure, dimensions, results: [own, ...others.map(checked)] };
}

export function definitionCheckTable(check: DefinitionCheck): DefinitionCheckTable {
  const { table, groups, skill, area, band, kind, column } = check.figure;
  return {
    id: "definition-check",
    title: "One figure under every definition that could be defended",
    population: [table, ...groups, skill, area, kind, band, column].filter((part) => part !== null).join(" / "),
    columns: [
      { key: "choice", label: "Definitions", unit: "text" },
      { key: "value", label: "Figure", unit: isShare(column) ? "share" : "number" },
    ],
    rows: check.results.map(({ text, value }) => [text, value]),
    notes: checkNotes(check),
  };
}

/** Null where no age group of the run has the figure's label. */
function usualChoice(settings: Settings, { band }: Figure): Choice | null {
  const { correction, recheckDays, disagreement, edges } = settings;
  const shared = { correction, recheckDays, disagreement, met: "observation" } as const;
  if (band === null) return { ...shared, edges: [] };
  const at = groupsOf(settings).indexOf(band);
  return at < 0 ? null : { ...shared, edges: edges.slice(Math.max(0, at - 1), at + 1) };
}

function groupsOf({ edges }: Settings): string[] {
  return Array.from({ length: edges.length + 1 }, (_, band) => bandLabel(band, edges));
}
