/** Told to the part of the grid that is about to be given the keyboard. */
export const LET_IN = "windowline-let-in";

/**
 * The grid takes the keyboard to itself once it is drawn, and again with each workbook, wherever a person is by then. Only
 * who goes there may have it: by pointer, by Tab or F6, or by a button that leads to a cell (`letIn`). Otherwise the keyboard
 * goes back to where it was.
 */
export function keepOut(container: HTMLElement): { readonly letIn: () => void } {
  let byPointer = false;
  let invited = false;
  const letIn = () => {
    invited = true;
    // For what is done at once, not for a grid that is drawn later.
    setTimeout(() => (invited = false));
  };
  window.addEventListener("pointerdown", ({ target }) => (byPointer = container.contains(target as Node)), true);
  window.addEventListener(
    "keydown",
    ({ key, target }) => {
      if (!container.contains(target as Node)) byPointer = false;
      if (GOES_THERE.has(key)) letIn();
    },
    true,
  );
  // F6 moves the keyboard in a listener of its own, which may come before the one above.
  container.addEventListener(LET_IN, letIn);
  container.addEventListener("focusin", ({ relatedTarget: from }) => {
    if (byPointer || invited) return;
    if (from instanceof HTMLElement && from.isConnected && !container.contains(from))
      from.focus({ preventScroll: true });
  });
  return { letIn };
}

const GOES_THERE: ReadonlySet<string> = new Set(["Tab", "F6"]);
