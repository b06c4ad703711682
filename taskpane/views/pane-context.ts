import { createContext, useContext } from "react";
import type { PaneState } from "../state/pane-state";
import type { PaneActions } from "./actions";

export interface PaneView {
  readonly state: PaneState;
  readonly actions: PaneActions;
}

export const PaneContext = createContext<PaneView | null>(null);

export function usePane(): PaneView {
  const view = useContext(PaneContext);
  if (!view) throw new RangeError("usePane: there is no pane around this view");
  return view;
}
