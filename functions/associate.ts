type Cells = (...args: any[]) => any[][];

/** Answers a call of a function with the arguments that it takes. `canceled` is aborted once nobody waits for it. */
export type Answerer = (name: string, fn: Cells, args: unknown[], canceled: AbortSignal) => unknown;

/** What Excel puts behind the arguments of a function that may be canceled. */
interface Invocation {
  onCanceled?: () => void;
}

interface ExcelRuntime {
  associate(name: string, fn: (...given: unknown[]) => unknown): void;
}

let answerer: Answerer | null = null;
let open: () => void;
const opened = new Promise<void>((resolve) => {
  open = resolve;
});

/**
 * Tells Excel which function stands behind a name. The build puts this in the place of the runtime's own `associate`, since
 * the same files are loaded where there is no such runtime: in a worker.
 */
export function associate(name: string, fn: Cells): void {
  const excel = (globalThis as unknown as { CustomFunctions?: ExcelRuntime }).CustomFunctions;
  excel?.associate(name, (...given) => {
    const args = given.slice(0, fn.length);
    const canceled = canceledBy(given[fn.length]);
    return answerer ? answerer(name, fn, args, canceled) : opened.then(() => answerer?.(name, fn, args, canceled));
  });
}

function canceledBy(invocation: unknown): AbortSignal {
  const stop = new AbortController();
  if (typeof invocation === "object" && invocation !== null) {
    (invocation as Invocation).onCanceled = () => stop.abort();
  }
  return stop.signal;
}

/** From now on calls are answered, those first that came before: Excel may ask before the date system is known. */
export function openFunctions(answer: Answerer): void {
  answerer = answer;
  open();
}
