import type { PaneAction, PaneState, Unsaved } from "./pane-state";

export const NOTHING_UNSAVED: Unsaved = { corrections: false, report: false, page: false };

export function reduceUnsaved(state: Unsaved, action: PaneAction): Unsaved {
  switch (action.type) {
    case "choice made":
    case "decisions changed":
      return { ...state, corrections: true };
    case "corrections saved":
      return { ...state, corrections: false };
    case "report made":
      return { ...state, report: true };
    case "report saved":
    case "report forgotten":
      return { ...state, report: false };
    case "page made":
      return { ...state, page: true };
    case "page saved":
    case "page forgotten":
      return { ...state, page: false };
    default:
      return state;
  }
}

/** As a person would name it. A ledger that lacks a release that was saved is lost work too. */
export function unsavedIn({ unsaved, release }: Pick<PaneState, "unsaved" | "release">): string[] {
  return [
    ...(unsaved.corrections ? ["your corrections"] : []),
    ...(unsaved.report ? ["the report"] : []),
    ...(unsaved.page ? ["the page you added"] : []),
    ...(release.isSaved && !release.isLogged ? ["the release log"] : []),
  ];
}
