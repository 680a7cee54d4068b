'use client';

import { useEffect, useState, type MouseEvent, type ReactNode } from 'react';
import { Dialog } from '../../parts/Dialog';
import { fetchTerms, type TermsById } from '../glossary/fetch-terms';
import { glossaryPath, termsPath } from '../../parts/lesson-paths';
import { ProseLine } from '../../parts/prose/Prose';
import styles from './player.module.css';
import { capital } from '@/lib/quantity/capital';

/** Opens a term of the glossary over the lesson, so that nothing half answered is left behind. */
export function TermsInPlace({ children }: { children: ReactNode }) {
  const [term, setTerm] = useState<string>();
  const open = (event: MouseEvent) => {
    if (event.defaultPrevented || event.button !== 0 || event.ctrlKey || event.metaKey || event.shiftKey) return;
    const link = event.target instanceof Element ? event.target.closest('a') : null;
    const [path, id] = (link?.getAttribute('href') ?? '').split('#');
    if (path !== glossaryPath || !id) return;
    event.preventDefault();
    setTerm(id);
  };
  return (
    // The links inside are reached and pressed by key as everywhere; this only listens to what they do.
    <div onClick={open}>
      {children}
      {term !== undefined && <TermDialog id={term} onClose={() => setTerm(undefined)} />}
    </div>
  );
}

function TermDialog({ id, onClose }: { id: string; onClose: () => void }) {
  const [terms, setTerms] = useState<TermsById | 'missing'>();
  useEffect(() => {
    let here = true;
    fetchTerms(termsPath).then(
      (terms) => here && setTerms(terms),
      () => here && setTerms('missing'),
    );
    return () => {
      here = false;
    };
  }, []);
  const term = terms === undefined || terms === 'missing' ? undefined : terms[id];
  return (
    <Dialog open onClose={onClose} title={term ? capital(term.term) : 'Glossary'}>
      <div className={styles.termMeans}>
        {term && term.also.length > 0 && <p>Also {term.also.join(', ')}.</p>}
        {term ? (
          <p>
            <ProseLine html={term.html} />
          </p>
        ) : (
          <p role="status">
            {terms === undefined ? 'Looking it up…' : 'The glossary can’t be read just now. Your answer is kept.'}
          </p>
        )}
        <p>
          <a href={`${glossaryPath}#${id}`} target="_blank" rel="noreferrer">
            The whole glossary, in a window of its own
          </a>
        </p>
      </div>
    </Dialog>
  );
}
