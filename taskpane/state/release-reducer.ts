import { settingsThatBearOn } from "../../src/settings/settings";
import type { ReleasableId } from "../../src/tables/table";
import type { PaneAction, ReleaseState } from "./pane-state";

export const initialRelease: ReleaseState = {
  tables: ["met-by-band"],
  ledger: null,
  refused: 0,
  made: null,
  refusal: null,
  isOld: false,
  isSaved: false,
  isLogged: false,
  prose: "",
  checked: null,
};

export function reduceRelease(state: ReleaseState, action: PaneAction): ReleaseState {
  switch (action.type) {
    case "release table chosen":
      return aged({ ...state, tables: chosen(state.tables, action.id, action.chosen) });
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

const NOTHING = { made: null, refusal: null, isOld: false, isSaved: false, isLogged: false, checked: null } as const;

/** Settings that change no figure of a release. */
const NO_BEARING = settingsThatBearOn("clusters");

/** A release is what was asked for, or it is not to be saved: a rule that was changed is another rule. */
function aged(state: ReleaseState): ReleaseState {
  return (state.made || state.refusal) && !state.isOld ? { ...state, isOld: true } : state;
}

function chosen(tables: readonly ReleasableId[], id: ReleasableId, isChosen: boolean): readonly ReleasableId[] {
  const others = tables.filter((each) => each !== id);
  return isChosen ? [...others, id] : others;
}
