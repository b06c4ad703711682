import { settingsThatBearOn } from "../../src/settings/settings";
import type { ReleasableId } from "../../src/tables/table";
import type { QuestionChoice } from "../worker/messages";
import type { PaneAction, ReleaseState } from "./pane-state";

export const initialRelease: ReleaseState = {
  questions: [],
  tables: ["met-by-band"],
  ledger: null,
  refused: 0,
  made: null,
  refusal: null,
  tried: null,
  isOld: false,
  isSaved: false,
  isLogged: false,
  prose: "",
  checked: null,
};

export function reduceRelease(state: ReleaseState, action: PaneAction): ReleaseState {
  switch (action.type) {
    case "release table chosen":
      return aged(withTable(state, action.id, action.chosen));
    case "release question chosen":
      return aged(withQuestion(state, action.question, action.chosen));
    case "ledger opened":
      return aged({ ...state, ledger: action.ledger });
    case "release refused by a field":
      return { ...state, refused: state.refused + 1 };
    case "entry changed":
      return NO_BEARING.includes(action.name) ? state : aged(state);
    case "records edited":
    case "decisions changed":
      return aged(state);
    default:
      return reduceOutcome(state, action);
  }
}

function reduceOutcome(state: ReleaseState, action: PaneAction): ReleaseState {
  switch (action.type) {
    case "release asked":
    case "release forgotten":
      return state.made || state.refusal || state.checked ? { ...state, ...NOTHING } : state;
    case "release made":
      return { ...state, ...NOTHING, made: action.made };
    case "release refused":
      return { ...state, ...NOTHING, refusal: action.refusal };
    case "release tried":
      return { ...state, tried: action.ways };
    case "release saved":
      return { ...state, isSaved: true };
    // The release that was just written down is part of the ledger now; protected against itself it is the same.
    case "ledger saved":
      return { ...state, ledger: action.ledger, isLogged: true };
    case "prose written":
      return { ...state, prose: action.prose, checked: null };
    case "prose checked":
      return { ...state, checked: action.checked };
    default:
      return state;
  }
}

const NOTHING = {
  made: null,
  refusal: null,
  tried: null,
  isOld: false,
  isSaved: false,
  isLogged: false,
  checked: null,
} as const;

/** Settings that change no figure of a release. */
const NO_BEARING = settingsThatBearOn("clusters");

/** A release is what was asked for, or it is not to be saved: a rule that was changed is another rule. */
function aged(state: ReleaseState): ReleaseState {
  return (state.made || state.refusal) && !state.isOld ? { ...state, isOld: true } : state;
}

/** A question that has lost its table is no longer asked. */
function withTable(state: ReleaseState, id: ReleasableId, isChosen: boolean): ReleaseState {
  const others = state.tables.filter((each) => each !== id);
  const questions = isChosen ? state.questions : state.questions.filter(({ table }) => table !== id);
  return { ...state, questions, tables: isChosen ? [...others, id] : others };
}

/** Questions bring their own tables, and nothing beside. */
function withQuestion(state: ReleaseState, question: QuestionChoice, isChosen: boolean): ReleaseState {
  const others = state.questions.filter(({ id }) => id !== question.id);
  const questions = isChosen ? [...others, question] : others;
  const tables = questions.length === 0 ? initialRelease.tables : [...new Set(questions.map(({ table }) => table))];
  return { ...state, questions, tables };
}
