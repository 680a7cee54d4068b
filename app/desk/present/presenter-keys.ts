import { isTypedIn } from '../../parts/typed-in';

interface KeyHelp {
  readonly doing: string;
  readonly keys: readonly string[];
  /** The keys as they read on a keyboard. */
  readonly names: string;
  readonly does: string;
}

/** Clickers send the page keys, arrows, B or a full stop. */
const KEYS = [
  {
    doing: 'next',
    keys: ['PageDown', 'ArrowRight', 'ArrowDown'],
    names: 'Page Down, → or ↓',
    does: 'Go to the next point or event; where playing waits at one, play on',
  },
  {
    doing: 'back',
    keys: ['PageUp', 'ArrowLeft', 'ArrowUp'],
    names: 'Page Up, ← or ↑',
    does: 'Go back to the one before',
  },
  { doing: 'play', keys: [' '], names: 'Space', does: 'Play or pause' },
  { doing: 'cover', keys: ['b', '.'], names: 'B or full stop', does: 'Cover all readings, or uncover them' },
  { doing: 'reveal', keys: ['r'], names: 'R', does: 'Uncover the next covered reading' },
  {
    doing: 'highlight',
    keys: ['h'],
    names: 'H',
    does: 'A ring around the pointer, on or off; it also shows while a mouse button is held',
  },
  { doing: 'larger', keys: ['+', '='], names: '+', does: 'Larger type' },
  { doing: 'smaller', keys: ['-'], names: '−', does: 'Smaller type' },
  { doing: 'help', keys: ['?'], names: '?', does: 'This list' },
  { doing: 'leave', keys: ['Escape'], names: 'Escape', does: 'Leave' },
] as const satisfies readonly KeyHelp[];

/** What a presenter can do by a key. */
export type PresenterDoing = (typeof KEYS)[number]['doing'];

/** Every key of the presenter's view. */
export const PRESENTER_KEYS: readonly (KeyHelp & { readonly doing: PresenterDoing })[] = KEYS;

/** Keys that move a slider, or press what has the focus, are left to it. */
const SLIDER_KEYS = ['ArrowRight', 'ArrowLeft', 'ArrowUp', 'ArrowDown', 'PageUp', 'PageDown', '+', '-'];

/** What a key asks of the presenter's view; undefined where it is meant for what has the focus. */
export function doingOfKey(event: KeyboardEvent): PresenterDoing | undefined {
  if (event.defaultPrevented || event.ctrlKey || event.metaKey || event.altKey) return undefined;
  const { target, key } = event;
  if (isTypedIn(target)) return undefined;
  if (target instanceof Element) {
    if (target.closest('dialog[open]')) return undefined;
    if (key === ' ' && target.closest('button, a[href], summary, select, input, label')) return undefined;
    if (
      SLIDER_KEYS.includes(key) &&
      target.closest('input[type="range"], select, [role="slider"], [role="separator"], input[type="radio"]')
    )
      return undefined;
  }
  const pressed = key.length === 1 ? key.toLowerCase() : key;
  return PRESENTER_KEYS.find(({ keys }) => keys.includes(pressed))?.doing;
}
