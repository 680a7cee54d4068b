import { isTypedIn } from '../../../parts/typed-in';

const KEYS = {
  next: ['PageDown', 'ArrowRight'],
  back: ['PageUp', 'ArrowLeft'],
  notes: ['n', 'N'],
  leave: ['Escape'],
} as const;

export type PresenterDoing = keyof typeof KEYS;

/** What a key or a clicker asks of the presenter's view; undefined where it is meant for what has the focus. */
export function classKey(event: KeyboardEvent): PresenterDoing | undefined {
  if (event.defaultPrevented || event.ctrlKey || event.metaKey || event.altKey) return undefined;
  const { target, key } = event;
  if (isTypedIn(target)) return undefined;
  if (
    target instanceof Element &&
    target.closest('dialog[open], input[type="range"], input[type="radio"], select, [role="slider"]')
  )
    return undefined;
  return (Object.keys(KEYS) as PresenterDoing[]).find((doing) => (KEYS[doing] as readonly string[]).includes(key));
}
