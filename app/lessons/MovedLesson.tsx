'use client';

import { useEffect } from 'react';
import { Page } from '../parts/Page';

/** In the place of a lesson that has another address now: leads there, to the same step. */
export function MovedLesson({ path, title }: { path: string; title: string }) {
  useEffect(() => window.location.replace(path + window.location.hash), [path]);
  return (
    <Page title={title}>
      <p>
        This lesson has another place on the shelf now: <a href={path}>{title}</a>.
      </p>
    </Page>
  );
}
