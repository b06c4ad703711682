import { settingsThatBearOn } from "../../src/settings/settings";
import type { RecordsFound } from "../worker/records/found";
import { reduceCaseload } from "./caseload-reducer";
import { NOTHING_LAST, reduceQuarter } from "./quarter-reducer";
import { initialRelease, reduceRelease } from "./release-reducer";
import type { Job, PaneAction, PaneState } from "./pane-state";
import { reduceUnderstanding } from "./understanding";
import { NOTHING_UNSAVED, reduceUnsaved } from "./unsaved";

export const initialState: PaneState = {
  place: "records",
  bookName: "",
  job: null,
  told: null,
  found: null,
  foundIsOld: false,
  understanding: null,
  choicesMade: [],
  decisions: { list: [], unread: null, messages: [] },
  quarter: { entries: {}, seen: [], tables: [], refused: 0, made: null, isOld: false, last: NOTHING_LAST },
  caseload: {
    therapist: null,
    visits: "",
    seen: false,
    refused: 0,
    listed: null,
    asked: null,
    isOld: false,
    page: null,
  },
  release: initialRelease,
  unsaved: NOTHING_UNSAVED,
  receipts: [],
  receiptsUnread: null,
  choices: { tables: [], records: [], questions: [] },
};

export function reducePane(state: PaneState, action: PaneAction): PaneState {
  const moved = reducePlaces(state, action);
  switch (action.type) {
    case "place opened":
      return action.place === moved.place ? moved : { ...moved, place: action.place, told: null };
    case "book named":
      return { ...moved, bookName: action.name };
    case "told":
      return { ...moved, told: action.told };
    case "receipts known":
      return { ...moved, receipts: action.receipts, receiptsUnread: null };
    case "receipts unread":
      return { ...moved, receiptsUnread: action.why };
    case "choices known":
      return { ...moved, choices: action.choices };
    default:
      return reduceRecords(reduceUnderstanding(reduceJob(moved, action), action), action);
  }
}

function reducePlaces(state: PaneState, action: PaneAction): PaneState {
  const quarter = reduceQuarter(state.quarter, action);
  const caseload = reduceCaseload(state.caseload, action);
  const release = reduceRelease(state.release, action);
  const unsaved = reduceUnsaved(state.unsaved, action);
  const isSame = quarter === state.quarter && caseload === state.caseload && release === state.release;
  return isSame && unsaved === state.unsaved ? state : { ...state, quarter, caseload, release, unsaved };
}

function reduceJob(state: PaneState, action: PaneAction): PaneState {
  switch (action.type) {
    case "job started":
      return { ...state, job: { kind: action.kind, progress: null, cancelling: false }, told: null };
    case "job moved":
      return withJob(state, (job) => ({ ...job, progress: action.progress }));
    case "job cancelling":
      return withJob(state, (job) => ({ ...job, cancelling: true }));
    case "job ended":
      return { ...state, job: null, told: action.told };
    default:
      return state;
  }
}

function withJob(state: PaneState, change: (job: Job) => Job): PaneState {
  return state.job ? { ...state, job: change(state.job) } : state;
}

function reduceRecords(state: PaneState, action: PaneAction): PaneState {
  switch (action.type) {
    case "records read":
      return { ...state, found: action.found, foundIsOld: false };
    case "records edited":
      return { ...state, foundIsOld: state.found !== null };
    case "cells shown":
      return state.found ? { ...state, found: withCells(state.found, action.group, action.cells) } : state;
    case "decisions loaded":
      return { ...state, decisions: { list: action.list, unread: null, messages: action.messages } };
    case "decisions unread":
      return { ...state, decisions: { ...state.decisions, unread: action.why } };
    case "decisions changed":
      return {
        ...state,
        decisions: { list: action.list, unread: null, messages: [] },
        foundIsOld: state.found !== null,
      };
    case "entry changed":
      return {
        ...state,
        foundIsOld: state.found !== null && BEARS_ON_READING.includes(action.name) ? true : state.foundIsOld,
      };
    default:
      return state;
  }
}

/** Settings that change what is found in the records. */
const BEARS_ON_READING = settingsThatBearOn("reading");

function withCells(found: RecordsFound, index: number, cells: RecordsFound["groups"][number]["cells"]): RecordsFound {
  const groups = found.groups.map((group, at) =>
    at === index ? { ...group, cells: [...group.cells, ...cells] } : group,
  );
  return { ...found, groups };
}
