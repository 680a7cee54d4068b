'use client';

import { useDeferredValue, useEffect } from 'react';
import { sayWhereShortly } from '@/lib/sayings/where';
import { usePreferences } from '../../parts/preferences';
import { useDesk, useDeskOncePainted } from '../desk-context';
import { cursorSample } from '../desk-store';
import { modelMomentOf } from '../model-moment';
import type { ReadingId } from '../reading-ids';

const NONE: readonly ReadingId[] = [];

/**
 * Tells the hand on time where the diver is, as its value in words, once what changed is painted. While time goes by
 * itself it keeps still for those who listen.
 */
export function WhereInWords({
  tell,
  unread = NONE,
}: {
  tell: (words: string) => void;
  unread?: readonly ReadingId[];
}) {
  const playing = useDesk((state) => state.playing);
  const scene = useDeferredValue(useDeskOncePainted((state) => state.scene));
  const sample = useDeferredValue(useDeskOncePainted(cursorSample));
  const covered = useDesk((state) => state.covered);
  const units = usePreferences((state) => state.units);
  const words = playing
    ? 'Playing'
    : sayWhereShortly({ model: modelMomentOf(scene, sample), covered: [...covered, ...unread] }, units);
  useEffect(() => tell(words), [tell, words]);
  return null;
}
