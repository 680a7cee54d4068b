'use client';

import { useEffect } from 'react';

/** Marks the page once it answers to a person: `data-ready` on the root. Whoever drives a browser waits for that. */
export function ReadyMark() {
  useEffect(() => {
    document.documentElement.dataset['ready'] = '';
  }, []);
  return null;
}
