import { isAllThere } from './fetched-later';

/** What a person did before the page was live: where, what kind of event, and what was written or chosen. */
interface EarlyPress {
  readonly kind: 'click' | 'input' | 'change' | 'space';
  readonly target: Element;
  readonly value?: string;
}

type Windowed = { earlyPresses?: EarlyPress[] };

/** How long presses wait for all of the page to be live, ms, and how often it is looked at. */
const WAITS_MS = 5000;
const LOOKS_MS = 50;

/** Does what was done before the page was live, once and in its order, when all that is fetched later answers too. */
export function replayEarlyPresses(): void {
  if (!(window as Windowed).earlyPresses) return;
  const untilMs = performance.now() + WAITS_MS;
  const look = () => {
    if (!isAllThere() && performance.now() < untilMs) {
      setTimeout(look, LOOKS_MS);
      return;
    }
    const waiting = (window as Windowed).earlyPresses ?? [];
    // From here on a press is heard by what it is meant for.
    delete (window as Windowed).earlyPresses;
    for (const press of waiting) {
      const target = inPlaceOf(press.target);
      if (target) replay({ ...press, target });
    }
  };
  // Parts that begin in the same breath count themselves first.
  setTimeout(look, 0);
}

/** What was pressed or, where a part was drawn anew when its code came, what has its name now. */
function inPlaceOf(target: Element): Element | undefined {
  if (target.isConnected) return target;
  const named = target.getAttribute('aria-label');
  return [...document.querySelectorAll(target.localName)].find((one) =>
    named === null ? one.textContent === target.textContent : one.getAttribute('aria-label') === named,
  );
}

function replay({ kind, target, value = '' }: EarlyPress): void {
  if (kind === 'space')
    target.dispatchEvent(new KeyboardEvent('keydown', { key: ' ', bubbles: true, cancelable: true }));
  else if (kind === 'click') {
    // A box that is ticked already would be the other way round after another press.
    if (target instanceof HTMLInputElement) target.checked = !target.checked;
    if (target instanceof HTMLElement) target.click();
  } else if (target instanceof HTMLSelectElement) {
    target.value = value;
    target.dispatchEvent(new Event('change', { bubbles: true }));
  } else if (target instanceof HTMLTextAreaElement || target instanceof HTMLInputElement) {
    const { set } = Object.getOwnPropertyDescriptor(Object.getPrototypeOf(target) as object, 'value')!;
    // React takes what it knows of already for no change: first it is told of what stood there, then the box is filled behind it.
    target.value = target.defaultValue;
    set!.call(target, value);
    target.dispatchEvent(new Event('input', { bubbles: true }));
    // A box that takes what is written once it is left has been left already.
    if (document.activeElement !== target) target.dispatchEvent(new FocusEvent('focusout', { bubbles: true }));
  }
}
