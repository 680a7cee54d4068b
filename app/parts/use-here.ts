import { useSelectedLayoutSegments } from 'next/navigation';

/** The path of the page that is shown. Not the window's: at an address that leads nowhere the two differ, and the page was drawn before anyone came to it. */
export function useHere(): string {
  return ['', ...useSelectedLayoutSegments(), ''].join('/');
}
