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
  const waiting = (window as Windowed).earlyPresses?.splice(0) ?? [];
  if (waiting.length === 0) return;
  const untilMs = performance.now() + WAITS_MS;
  const look = () => {
    if (!isAllThere() && performance.now() < untilMs) setTimeout(look, LOOKS_MS);
    else for (const press of waiting) if (press.target.isConnected) replay(press);
  };
  // Parts that begin in the same breath count themselves first.
  setTimeout(look, 0);
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
  }
}
