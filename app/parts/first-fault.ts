/**
 * Leads a press that can do nothing yet to the first control with something wrong in it: focuses it, so that its name and
 * its fault are read out, and has the fault said again, as a field does when Enter is pressed in it. Whether there was one.
 */
export function toFirstFault(within: ParentNode = document): boolean {
  const fault = within.querySelector<HTMLElement>('[aria-invalid]');
  fault?.focus();
  fault?.dispatchEvent(new KeyboardEvent('keydown', { key: 'Enter', bubbles: true }));
  return fault !== null;
}

/** The same for what the press itself finds wrong: once it is marked. */
export const toFaultOnceMarked = (within: ParentNode | null) =>
  requestAnimationFrame(() => within && toFirstFault(within));
