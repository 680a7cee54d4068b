import { lazy, Suspense, type ComponentType, type ReactNode } from 'react';

/**
 * A part of the page whose code is fetched once it is to be drawn, so that the page opens sooner without it. `meanwhile`
 * is drawn until then; where the code can't be had, words that say so.
 */
export function fetchedLater<Props extends object>(load: () => Promise<ComponentType<Props>>, meanwhile: ReactNode = null): ComponentType<Props> {
  const Part = lazy(async () => ({ default: await load().catch(() => Unfetched as ComponentType<Props>) }));
  return function FetchedLater(props: Props) {
    return (
      <Suspense fallback={meanwhile}>
        <Part {...props} />
      </Suspense>
    );
  };
}

function Unfetched() {
  return <p role="alert">This part of the page could not be fetched. Reload the page while you are online; what is kept on this machine stays.</p>;
}
