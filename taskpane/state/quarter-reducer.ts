import type { TableId } from "../../src/tables/table";
import type { PaneAction, LastState, QuarterState } from "./pane-state";

export const NOTHING_LAST: LastState = { file: null, asOf: "", lost: [], compared: null, isOld: false, again: null };

export function reduceQuarter(state: QuarterState, action: PaneAction): QuarterState {
  const moved = reduceReport(state, action);
  const last = reduceLast(state.last, action);
  return last === state.last ? moved : { ...moved, last };
}

function reduceLast(state: LastState, action: PaneAction): LastState {
  switch (action.type) {
    case "last chosen":
      return { ...NOTHING_LAST, file: action.file, asOf: action.asOf };
    case "last day entered":
      return { ...state, asOf: action.asOf, isOld: state.compared !== null };
    case "rows lost":
      return { ...state, lost: action.lost };
    case "comparison made":
      return { ...state, compared: action.compared, lost: action.lost, isOld: false };
    case "comparison forgotten":
      return state.compared ? { ...state, compared: null, isOld: false } : state;
    case "report made again":
      return { ...state, again: action.again };
    case "entry changed":
    case "records edited":
    case "decisions changed":
      return state.compared || state.again || state.lost.length > 0
        ? { ...state, isOld: state.compared !== null, again: null, lost: [] }
        : state;
    default:
      return state;
  }
}

function reduceReport(state: QuarterState, action: PaneAction): QuarterState {
  switch (action.type) {
    case "entry changed":
      return aged({ ...state, entries: { ...state.entries, [action.name]: action.value } });
    case "records edited":
    case "decisions changed":
      return aged(state);
    case "entries seen":
      return { ...state, seen: [...new Set([...state.seen, ...action.names])] };
    case "build refused":
      return { ...state, refused: state.refused + 1 };
    case "table chosen":
      return aged({ ...state, tables: chosen(state.tables, action.id, action.chosen) });
    case "choices known":
      return { ...state, tables: action.choices.tables.filter(({ internal }) => !internal).map(({ id }) => id) };
    case "report made":
      return { ...state, made: action.made, isOld: false };
    case "report added":
      return { ...state, made: state.made && { ...state.made, firstSheet: action.firstSheet } };
    case "report forgotten":
      return { ...state, made: null, isOld: false };
    case "records read":
      return { ...state, entries: withoutLostGroups(state.entries, action.found.groupColumns) };
    default:
      return state;
  }
}

function aged(state: QuarterState): QuarterState {
  return state.made && !state.isOld ? { ...state, isOld: true } : state;
}

function chosen(tables: readonly TableId[], id: TableId, isChosen: boolean): readonly TableId[] {
  const others = tables.filter((each) => each !== id);
  return isChosen ? [...others, id] : others;
}

/** A column that is no longer there cannot be unticked, so it may not stay chosen. */
function withoutLostGroups(
  entries: QuarterState["entries"],
  columns: readonly { readonly heading: string }[],
): QuarterState["entries"] {
  const { by } = entries;
  if (!Array.isArray(by) || columns.length === 0) return entries;
  return { ...entries, by: by.filter((heading) => columns.some((column) => column.heading === heading)) };
}
