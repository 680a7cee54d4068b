'use client';

import { useEffect, useMemo, useState } from 'react';
import { cautions } from '@/content/cautions';
import { decodeAnswers } from '@/lib/files/links/answers-link';
import { readHandedIn, type HandedIn } from '@/lib/lesson/handed-in';
import { Button } from '../../parts/Button';
import { Choice } from '../../parts/Choice';
import { knownNames } from '../known-names';
import { LessonOfClass } from './LessonOfClass';
import styles from './results.module.css';

interface ClassResultsProps {
  terms: readonly { readonly id: string }[];
  lessons: readonly { readonly slug: string; readonly title: string }[];
}

/** A file of answers is far smaller, bytes. */
const LARGEST_FILE = 2_000_000;

interface Paper extends HandedIn {
  readonly text: string;
}

/** Papers that learners handed in, put together by lesson and question. They are kept until the page is closed. */
export function ClassResults({ terms, lessons }: ClassResultsProps) {
  const known = useMemo(() => knownNames(terms), [terms]);
  const [papers, setPapers] = useState<readonly Paper[]>([]);
  const [refusals, setRefusals] = useState<readonly string[]>([]);
  const [links, setLinks] = useState('');
  const [chosen, choose] = useState<string>();

  const take = (
    texts: readonly { readonly from: string; readonly text: string | undefined; readonly why?: string }[],
  ) => {
    const refusedOnes: string[] = [];
    const taken: Paper[] = [];
    for (const { from, text, why } of texts) {
      const read = text === undefined ? undefined : readHandedIn(text);
      if (read?.ok) taken.push({ ...read.value, text: text! });
      else refusedOnes.push(`${from}: ${read ? `${read.what} ${read.mend}` : why}`);
    }
    setRefusals(refusedOnes);
    // One paper opened twice is one paper.
    setPapers((before) => [
      ...before,
      ...taken.filter(
        ({ text }, index) =>
          !before.some((one) => one.text === text) && taken.findIndex((one) => one.text === text) === index,
      ),
    ]);
  };

  const takeLinks = (text: string) => {
    const lines = text.split(/\s+/).filter((line) => line !== '');
    take(
      lines.map((line, index) => {
        const read = decodeAnswers(line);
        const from = `Link ${index + 1}`;
        return read.ok ? { from, text: read.value } : { from, text: undefined, why: `${read.what} ${read.mend}` };
      }),
    );
  };

  const takeFiles = async (files: FileList | null) => {
    const read = Array.from(files ?? []).map(async (file) =>
      file.size > LARGEST_FILE
        ? {
            from: file.name,
            text: undefined,
            why: 'This is too large for answers. Choose a file saved with “Hand in”.',
          }
        : { from: file.name, text: await file.text() },
    );
    take(await Promise.all(read));
  };

  useEffect(() => {
    if (window.location.hash.length > 1) takeLinks(window.location.href);
    // The link the page was opened with, once.
    // eslint-disable-next-line react-hooks/exhaustive-deps
  }, []);

  const begun = lessons.filter(({ slug }) => papers.some((paper) => Object.hasOwn(paper.lessons, slug)));
  const lesson = begun.find(({ slug }) => slug === chosen) ?? begun[0];

  return (
    <div className={styles.results}>
      <section aria-label="Open papers" className={`${styles.open} unprinted`}>
        <label className={styles.file}>
          <span>Files that were handed in</span>
          <input
            type="file"
            multiple
            accept=".json,application/json"
            onChange={(event) => {
              void takeFiles(event.target.files);
              event.target.value = '';
            }}
          />
        </label>
        <div className={styles.links}>
          <label htmlFor="handed-in-links">Or links, one to a line</label>
          <textarea id="handed-in-links" rows={2} value={links} onChange={(event) => setLinks(event.target.value)} />
          <Button
            disabled={links.trim() === ''}
            onClick={() => {
              takeLinks(links);
              setLinks('');
            }}
          >
            Open the links
          </Button>
        </div>
      </section>
      {refusals.length > 0 && (
        <ul role="alert" className={styles.refusals}>
          {refusals.map((text) => (
            <li key={text}>{text}</li>
          ))}
        </ul>
      )}
      <p role="status">
        {papers.length === 0
          ? 'No paper is open yet. Learners find “Hand in” among the results of a lesson.'
          : `${papers.length} ${papers.length === 1 ? 'paper' : 'papers'} open. They stay here until this page is closed.`}
      </p>
      {lesson && (
        <>
          <div className={`${styles.tools} unprinted`}>
            <Choice
              label="Lesson"
              value={lesson.slug}
              onChange={choose}
              options={begun.map(({ slug, title }) => ({ value: slug, label: title }))}
            />
            <Button
              kind="quiet"
              onClick={() => {
                setPapers([]);
                setRefusals([]);
              }}
            >
              Put all papers away
            </Button>
          </div>
          <LessonOfClass key={lesson.slug} {...lesson} papers={papers} known={known} />
        </>
      )}
      {papers.length > 0 && !lesson && <p>None of these papers is about a lesson of this shelf.</p>}
      <p>{cautions.general}</p>
    </div>
  );
}
