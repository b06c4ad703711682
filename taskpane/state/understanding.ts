import { applyChoice } from "../../src/records/understanding/choices";
import { openQuestions, type SameChild, type Understanding } from "../../src/records/understanding/understanding";
import type { ChoiceMade, PaneAction, PaneState } from "./pane-state";

type Part = Pick<PaneState, "understanding" | "choicesMade">;

/** Choices outlive a reading: they are made again on what was read. */
export function reduceUnderstanding(state: PaneState, action: PaneAction): PaneState {
  const part = partAfter(state, action);
  return part === state ? state : { ...state, ...part };
}

function partAfter(state: Part, action: PaneAction): Part {
  switch (action.type) {
    case "records read":
      return {
        understanding: state.choicesMade.reduce(withChoice, action.found.understanding),
        choicesMade: state.choicesMade,
      };
    case "choice made":
      if (state.understanding === null) return state;
      return {
        understanding: withChoice(state.understanding, action.made),
        choicesMade: [...state.choicesMade, action.made],
      };
    case "choices confirmed":
      return { understanding: state.understanding, choicesMade: [] };
    default:
      return state;
  }
}

function withChoice(before: Understanding, { choice, joined }: ChoiceMade): Understanding {
  const after = applyChoice(before, choice);
  return joined ? { ...after, sameChild: after.sameChild.filter((pair) => !isSame(pair, joined)) } : after;
}

function isSame(a: SameChild, b: SameChild): boolean {
  return a.first === b.first && a.second === b.second;
}

/** What keeps the way the workbook is read from being confirmed, or confirmed yet. */
export function openIn({ understanding, choicesMade }: Part): {
  readonly unsettled: number;
  readonly doubtful: number;
  readonly choices: number;
} {
  const open = understanding === null ? { unsettled: 0, doubtful: 0 } : openQuestions(understanding);
  return { ...open, choices: choicesMade.length };
}
