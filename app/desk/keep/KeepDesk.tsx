'use client';

import { useEffect } from 'react';
import { useKeptDesk, type KeptDesk } from './use-kept-desk';

/** Keeps the desk around and opens what a link carries, and tells how that stands. It draws nothing. */
export function KeepDesk({ tell }: { tell: (kept: KeptDesk) => void }) {
  const kept = useKeptDesk();
  useEffect(() => tell(kept), [tell, kept]);
  return null;
}
