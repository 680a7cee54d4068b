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

/** Something that was handed in, before it is read; or why there is nothing to read. */
interface Handed {
  readonly from: string;
  readonly text: string | undefined;
  readonly why?: string;
}

function readAll(texts: readonly Handed[]): { readonly taken: readonly Paper[]; readonly refusals: readonly string[] } {
  const refusals: string[] = [];
  const taken: Paper[] = [];
  for (const { from, text, why } of texts) {
    const read = text === undefined ? undefined : readHandedIn(text);
    if (read?.ok) taken.push({ ...read.value, text: text! });
    else refusals.push(`${from}: ${read ? `${read.what} ${read.mend}` : why}`);
  }
  return { taken, refusals };
}

/** One paper opened twice is one paper. */
function together(before: readonly Paper[], taken: readonly Paper[]): readonly Paper[] {
  return [...new Map([...before, ...taken].map((paper) => [paper.text, paper])).values()];
}

function fromLinks(text: string): Handed[] {
  const lines = text.split(/\s+/).filter((line) => line !== '');
  return lines.map((line, index) => {
    const read = decodeAnswers(line);
    const from = `Link ${index + 1}`;
    return read.ok ? { from, text: read.value } : { from, text: undefined, why: `${read.what} ${read.mend}` };
  });
}

/** The link the page was opened with, if it carries answers. */
const linkInAddress = () => (window.location.hash.startsWith('#answers-') ? fromLinks(window.location.href) : []);

/** Papers that learners handed in, put together by lesson and question. They are kept until the page is closed. */
export function ClassResults({ terms, lessons }: ClassResultsProps) {
  const known = useMemo(() => knownNames(terms), [terms]);
  const [opened] = useState(() => readAll(linkInAddress()));
  const [papers, setPapers] = useState<readonly Paper[]>(opened.taken);
  const [refusals, setRefusals] = useState<readonly string[]>(opened.refusals);
  const [links, setLinks] = useState('');
  const [chosen, choose] = useState<string>();

  const take = (texts: readonly Handed[]) => {
    const { taken, refusals } = readAll(texts);
    setRefusals(refusals);
    setPapers((before) => together(before, taken));
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

  // A link that is opened while the page stands is one paper more.
  useEffect(() => {
    const follow = () => {
      const { taken, refusals } = readAll(linkInAddress());
      setRefusals(refusals);
      setPapers((before) => together(before, taken));
    };
    window.addEventListener('hashchange', follow);
    return () => window.removeEventListener('hashchange', follow);
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
              take(fromLinks(links));
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
