'use client';

import { useEffect, useMemo, useRef, useState } from 'react';
import { cautions } from '@/content/cautions';
import { decodeAnswers } from '@/lib/files/links/answers-link';
import { isLessonLink } from '@/lib/files/links/lesson-link';
import { isOwnSlug, ownSlug } from '@/lib/files/links/own-lesson';
import { readHandedIn, type HandedIn } from '@/lib/files/handed-in';
import { openShelf } from '../../keep/open-shelf';
import { Button } from '../../parts/Button';
import { Choice } from '../../parts/Choice';
import { knownNames } from '../../stage/known-names';
import { draftTitle } from '../workshop/draft-title';
import { keptDrafts } from '../workshop/drafts';
import { lessonOfLink } from '../lesson-of-link';
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
  /** A lesson that papers may be about. */
  readonly lesson?: string;
}

/** A lesson that is not on the shelf, by the name its papers have. */
interface OwnLesson {
  readonly slug: string;
  readonly title: string;
  readonly own?: string | undefined;
}

const ownLesson = (text: string): OwnLesson => ({ slug: ownSlug(text), title: draftTitle(text), own: text });

function readAll(texts: readonly Handed[]): {
  readonly taken: readonly Paper[];
  readonly refusals: readonly string[];
  readonly own: readonly OwnLesson[];
} {
  const refusals: string[] = [];
  const taken: Paper[] = [];
  const own = texts.flatMap(({ lesson }) => (lesson === undefined ? [] : [ownLesson(lesson)]));
  for (const { from, text, why, lesson } of texts) {
    if (lesson !== undefined) continue;
    const read = text === undefined ? undefined : readHandedIn(text);
    if (read?.ok) taken.push({ ...read.value, text: text! });
    else refusals.push(`${from}: ${read ? `${read.what} ${read.mend}` : why}`);
  }
  return { taken, refusals, own };
}

/** A file is answers, or a lesson they may be about. */
function handedFile(from: string, text: string): Handed {
  return /\.ya?ml$/i.test(from) ? { from, text: undefined, lesson: text } : { from, text };
}

/** One paper opened twice is one paper. */
function together(before: readonly Paper[], taken: readonly Paper[]): readonly Paper[] {
  return [...new Map([...before, ...taken].map((paper) => [paper.text, paper])).values()];
}

async function fromLinks(text: string): Promise<Handed[]> {
  const lines = text.split(/\s+/).filter((line) => line !== '');
  return Promise.all(
    lines.map(async (line, index): Promise<Handed> => {
      const fragment = line.replace(/^[^#]*#/, '');
      if (!isLessonLink(fragment)) return answersOfLink(line, index);
      const from = `Link ${index + 1}`;
      const read = await lessonOfLink(fragment);
      return read.ok
        ? { from, text: undefined, lesson: read.value }
        : { from, text: undefined, why: `${read.what} ${read.mend}` };
    }),
  );
}

function answersOfLink(link: string, index = 0): Handed {
  const from = `Link ${index + 1}`;
  const read = decodeAnswers(link);
  return read.ok ? { from, text: read.value } : { from, text: undefined, why: `${read.what} ${read.mend}` };
}

/** The link the page was opened with, if it carries answers. */
const linkInAddress = () => (window.location.hash.startsWith('#answers-') ? [answersOfLink(window.location.href)] : []);

/** Papers that learners handed in, put together by lesson and question. They are kept until the page is closed. */
export function ClassResults({ terms, lessons }: ClassResultsProps) {
  const known = useMemo(() => knownNames(terms), [terms]);
  const [opened] = useState(() => readAll(linkInAddress()));
  const [papers, setPapers] = useState<readonly Paper[]>(opened.taken);
  const [refusals, setRefusals] = useState<readonly string[]>(opened.refusals);
  const [own, setOwn] = useState<readonly OwnLesson[]>(opened.own);
  const [links, setLinks] = useState('');
  const [vainPresses, setVainPresses] = useState(0);
  const inVain = vainPresses > 0;
  const box = useRef<HTMLTextAreaElement>(null);
  const [chosen, choose] = useState<string>();

  const take = (texts: readonly Handed[]) => {
    const read = readAll(texts);
    setRefusals(read.refusals);
    setPapers((before) => together(before, read.taken));
    setOwn((before) => [...before, ...read.own]);
  };

  // Lessons made on this machine are known here without being asked for.
  useEffect(() => {
    let here = true;
    openShelf()
      .then(keptDrafts)
      .then(({ drafts }) => here && setOwn((before) => [...before, ...drafts.map(({ text }) => ownLesson(text))]))
      .catch(() => undefined);
    return () => {
      here = false;
    };
  }, []);

  const takeFiles = async (files: FileList | null) => {
    const read = Array.from(files ?? []).map(async (file) =>
      file.size > LARGEST_FILE
        ? {
            from: file.name,
            text: undefined,
            why: 'This is too large for answers. Choose a file saved with “Hand in”.',
          }
        : handedFile(file.name, await file.text()),
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

  const all: readonly OwnLesson[] = [...lessons, ...new Map(own.map((one) => [one.slug, one])).values()];
  const begun = all.filter(({ slug }) => papers.some((paper) => Object.hasOwn(paper.lessons, slug)));
  const strange = new Set(papers.flatMap((paper) => Object.keys(paper.lessons).filter(isOwnSlug)));
  all.forEach(({ slug }) => strange.delete(slug));
  const lesson = begun.find(({ slug }) => slug === chosen) ?? begun[0];

  return (
    <div className={styles.results}>
      <section aria-label="Open papers" className={`${styles.open} unprinted`}>
        <label className={styles.file}>
          <span>Files that were handed in</span>
          <input
            type="file"
            multiple
            accept=".json,application/json,.yaml,.yml"
            onChange={(event) => {
              void takeFiles(event.target.files);
              event.target.value = '';
            }}
          />
        </label>
        <div className={styles.links}>
          <label htmlFor="handed-in-links">Or links, one to a line</label>
          <textarea
            ref={box}
            id="handed-in-links"
            rows={2}
            value={links}
            aria-invalid={inVain || undefined}
            aria-describedby={inVain ? 'no-links' : undefined}
            onChange={(event) => {
              setLinks(event.target.value);
              setVainPresses(0);
            }}
          />
          {inVain && (
            <p key={vainPresses} id="no-links" role="alert">
              No link is here yet. Paste those that were handed in first.
            </p>
          )}
          <Button
            onClick={() => {
              if (links.trim() === '') {
                setVainPresses(vainPresses + 1);
                box.current?.focus();
                return;
              }
              void fromLinks(links).then(take);
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
      {strange.size > 0 && (
        <p role="status">
          {strange.size === 1 ? 'One lesson' : `${strange.size} lessons`} in these papers{' '}
          {strange.size === 1 ? 'is' : 'are'} not on the shelf. Open the link or the file of that lesson here too.
        </p>
      )}
      {papers.length > 0 && !lesson && strange.size === 0 && (
        <p>None of these papers is about a lesson of this shelf.</p>
      )}
      <p>{cautions.general}</p>
    </div>
  );
}
