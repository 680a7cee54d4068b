import { useSyncExternalStore } from 'react';

const never = () => () => undefined;

/**
 * Whether the page is at work in a browser: false while it is drawn ahead, and until it has taken over what came drawn.
 * For parts of a drawing that are fetched later: drawn ahead, they would come with styles of their own, which the
 * page's policy refuses.
 */
export function useOpened(): boolean {
  return useSyncExternalStore(
    never,
    () => true,
    () => false,
  );
}
