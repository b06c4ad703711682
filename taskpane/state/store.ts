/** One value that changes only by actions; whoever listens is told after each change. */
export interface Store<State, Action> {
  readonly state: () => State;
  readonly dispatch: (action: Action) => void;
  readonly subscribe: (listener: () => void) => () => void;
}

export function createStore<State, Action>(
  reduce: (state: State, action: Action) => State,
  initial: State,
): Store<State, Action> {
  let state = initial;
  const listeners = new Set<() => void>();
  return {
    state: () => state,
    dispatch(action) {
      const next = reduce(state, action);
      if (next === state) return;
      state = next;
      listeners.forEach((listener) => listener());
    },
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}
