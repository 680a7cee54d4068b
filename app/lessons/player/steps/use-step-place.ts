import { useEffect, useState } from 'react';
import type { PreparedLesson } from '../../prepared';

/**
 * Which step is open, by its index; the number of steps stands for the results. The part of the address after # names
 * it, so that a link opens there; without one, the learner goes on where they were.
 */
export function useStepPlace({ steps }: PreparedLesson, before: string | undefined, addressed: boolean) {
  const [chosen, setChosen] = useState<number>();
  const remembered = Math.max(
    0,
    steps.findIndex(({ id }) => id === before),
  );

  useEffect(() => {
    if (!addressed) return undefined;
    const follow = () => {
      const named = steps.findIndex(({ id }) => id === decodeURIComponent(window.location.hash.slice(1)));
      if (named >= 0) setChosen(named);
    };
    follow();
    window.addEventListener('hashchange', follow);
    return () => window.removeEventListener('hashchange', follow);
  }, [steps, addressed]);

  const go = (place: number) => {
    const to = Math.min(Math.max(0, place), steps.length);
    setChosen(to);
    if (addressed)
      window.history.replaceState(window.history.state, '', steps[to] ? `#${steps[to].id}` : window.location.pathname);
  };
  return { place: chosen ?? remembered, go };
}
