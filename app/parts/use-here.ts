import { useSelectedLayoutSegments } from 'next/navigation';

/** The path of the page that is shown. Not the window's: at an address that leads nowhere the two differ, and the page was drawn before anyone came to it. */
export function useHere(): string {
  // Its type has none of it, but outside a page's layout there are no segments.
  const segments: readonly string[] | null = useSelectedLayoutSegments();
  return ['', ...(segments ?? []), ''].join('/');
}
