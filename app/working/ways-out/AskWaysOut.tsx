'use client';

import type { Target } from '@/lib/ways-out/trouble';
import { Button } from '../../parts/Button';
import { usePressedFirst } from '../../parts/use-pressed-first';
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
  const press = usePressedFirst(() => useOpenWhy.getState().ask(waysOutId(target)));
  if (!here) return null;
  return (
    <Button kind={kind} {...press}>
      {children ?? (reverse ? 'How much more would it have taken?' : 'What would have avoided it?')}
    </Button>
  );
}
