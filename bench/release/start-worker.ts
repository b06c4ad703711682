import { loadSolver } from "../../functions/elsewhere/load-solver";
import { prepareTimed } from "./prepare";

const scope = globalThis as unknown as {
  onmessage: ((event: MessageEvent<number>) => void) | null;
  postMessage: (message: unknown) => void;
};

/** Told after how many milliseconds to end the search; answers with each step, then with the outcome. */
scope.onmessage = ({ data: mostMs }) => {
  loadSolver()
    .then((solver) => {
      const onStep = (step: string) => scope.postMessage({ step });
      scope.postMessage({ prepared: prepareTimed(solver, mostMs, () => performance.now(), onStep) });
    })
    .catch((error: unknown) => scope.postMessage({ failed: String(error) }));
};
