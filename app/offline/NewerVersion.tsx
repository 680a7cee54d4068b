'use client';

import { useEffect, useState } from 'react';
import { Button } from '../parts/Button';
import { safeSession, safeStorage } from '../parts/safe-storage';
import { useStatus } from '../parts/status';
import { keepCopy } from './keep-copy';
import styles from './NewerVersion.module.css';

/** Set on this machine once it has been said that the site is kept, and in this window while a newer version is to wait. */
const TOLD = 'halftime.kept-told';
const LATER = 'halftime.newer-later';

type News = { readonly kind: 'newer'; readonly use: () => void } | { readonly kind: 'replaced' };

/**
 * Has the browser keep the site for use without a network, and says when a newer version is ready. It stands where it
 * moves nothing and covers nothing: beside the caution where there is room, otherwise at the foot of the page.
 */
export function NewerVersion() {
  const [news, setNews] = useState<News>();

  useEffect(() => {
    // While the site is being worked on, a kept copy would show yesterday's work.
    if (process.env.NODE_ENV !== 'production') return undefined;
    return keepCopy({
      kept: tellOnce,
      newer: (use) => safeSession.getItem(LATER) === null && setNews({ kind: 'newer', use }),
      replaced: () => setNews({ kind: 'replaced' }),
    });
  }, []);

  const later = () => {
    // Where this can't be kept, it is offered again on the next page.
    safeSession.setItem(LATER, 'yes');
    setNews(undefined);
  };
  return (
    <div role="status" className={`${styles.place} unprinted`}>
      {news && (
        <>
          <span>
            {news.kind === 'newer'
              ? 'A newer version of Halftime is ready.'
              : 'Halftime is newer in another window than in this one.'}
          </span>
          <Button kind="quiet" onClick={news.kind === 'newer' ? news.use : () => window.location.reload()}>
            Use it now
          </Button>
          <Button kind="quiet" onClick={later}>
            Later
          </Button>
        </>
      )}
    </div>
  );
}

/** Said once on a machine, and not over what is being said; another page says it then. */
function tellOnce(): void {
  const { message, say } = useStatus.getState();
  if (message !== undefined || safeStorage.getItem(TOLD) !== null) return;
  safeStorage.setItem(TOLD, 'yes');
  if (safeStorage.getItem(TOLD) !== null) say('Halftime is now kept in this browser: it opens without a network too.');
}
