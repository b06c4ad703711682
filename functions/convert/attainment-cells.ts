import type { AgeClock } from "../../src/age/correction";
import { metBetween, metBetweenAges } from "../../src/cohort/interval";
import { groupOfEverFollowed, type TableContext } from "../../src/tables/context";
import type { AnswerCell } from "../answer";

/**
 * A header row, then one row for each child ever followed and skill it was observed for: between which whole days of age
 * the skill was met, the last blank where it was never seen.
 */
export function attainmentCells(context: TableContext): AnswerCell[][] {
  const { cohort, attainment } = context;
  const groupOf = groupOfEverFollowed(context);
  const rows = cohort.ids.flatMap((id, child) =>
    (groupOf[child] as number) < 0
      ? []
      : cohort.skills.flatMap((skill, index): AnswerCell[][] => {
          const clock = cohort.clocks[child] as AgeClock;
          const between = metBetween(attainment, child * attainment.skillCount + index, clock);
          if (!between) return [];
          const { after, by } = metBetweenAges(between, clock, skill.ageBasis);
          return [[id, skill.id, after, Number.isFinite(by) ? by : null]];
        }),
  );
  return [["Child", "Skill", "After", "By"], ...rows];
}
