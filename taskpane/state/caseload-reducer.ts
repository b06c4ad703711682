import { settingsThatBearOn } from "../../src/settings/settings";
import type { RecordsFound } from "../worker/records/found";
import type { CaseloadState, PaneAction } from "./pane-state";

export function reduceCaseload(state: CaseloadState, action: PaneAction): CaseloadState {
  switch (action.type) {
    case "therapist chosen":
      return { ...state, therapist: action.therapist };
    case "visits entered":
      return { ...state, visits: action.visits };
    case "caseload refused":
      return { ...state, seen: true, refused: state.refused + 1 };
    case "caseload listed":
      return { ...state, listed: action.listed, asked: action.asked, isOld: false, seen: false };
    case "entry changed":
      return BEARS_ON_LIST.includes(action.name) ? aged(state) : state;
    case "records edited":
    case "decisions changed":
      return aged(state);
    case "records read":
      return withoutLostTherapist(state, action.found);
    default:
      return reducePage(state, action);
  }
}

function reducePage(state: CaseloadState, action: PaneAction): CaseloadState {
  switch (action.type) {
    case "page made":
      return { ...state, page: action.page };
    case "page forgotten":
      return state.page ? { ...state, page: null } : state;
    default:
      return state;
  }
}

/** Settings that change which children are listed, or why. */
const BEARS_ON_LIST = settingsThatBearOn("reading", "ages", "met", "boxes");

function aged(state: CaseloadState): CaseloadState {
  return state.listed && !state.isOld ? { ...state, isOld: true } : state;
}

/** One who is no longer in the records cannot stay chosen. */
function withoutLostTherapist(state: CaseloadState, { failure, therapists }: RecordsFound): CaseloadState {
  const { therapist } = state;
  if (therapist === null || failure !== null || therapists?.includes(therapist)) return state;
  return { ...state, therapist: null };
}
