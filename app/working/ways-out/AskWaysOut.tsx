'use client';

import { useState } from 'react';
import type { Target } from '@/lib/ways-out/trouble';
import { oncePainted } from '../../parts/after-paint';
import { Button } from '../../parts/Button';
import { useOpenWhy } from '../../parts/working/open-why';
import { useWaysOutHere, waysOutId } from './ways-out-here';

interface AskWaysOutProps {
  target: Target;
  /** Asks the other way about: how much more it would have taken. */
  reverse?: boolean;
  kind?: 'plain' | 'quiet';
  /** The question in other words, where it stands by itself. */
  children?: string;
}

/** Asks what would have avoided it. Nothing where no panel is about that would answer, as in a lesson. */
export function AskWaysOut({ target, reverse = false, kind = 'plain', children }: AskWaysOutProps) {
  const here = useWaysOutHere((state) => state.panels > 0);
  const [asked, setAsked] = useState(false);
  if (!here) return null;
  // The button is seen to be pressed; then its answer takes the place of the one it stands in, which is long to take away.
  const ask = () => {
    setAsked(true);
    oncePainted(() => {
      setAsked(false);
      useOpenWhy.getState().ask(waysOutId(target));
    });
  };
  return (
    <Button kind={kind} aria-busy={asked} onClick={ask}>
      {children ?? (reverse ? 'How much more would it have taken?' : 'What would have avoided it?')}
    </Button>
  );
}
