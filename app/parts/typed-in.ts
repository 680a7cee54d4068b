/** Kinds of boxes that hold no text, so that keys pressed in them mean nothing by themselves. */
const NO_TEXT = ['button', 'checkbox', 'radio', 'range', 'file', 'reset', 'submit', 'color'];

/** Whether what is pressed there is text to whoever presses it. */
export function isTypedIn(target: EventTarget | null): boolean {
  if (target instanceof HTMLInputElement) return !NO_TEXT.includes(target.type);
  return target instanceof HTMLElement && (target.isContentEditable || target instanceof HTMLTextAreaElement);
}
