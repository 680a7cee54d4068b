'use client';

import { useEffect, useState } from 'react';
import { cautions } from '@/content/cautions';
import type { Asked } from '@/lib/class/class-state';
import type { HomeLesson } from '@/lib/class/home-lesson';
import { encodeLesson } from '@/lib/files/links/lesson-link';
import { lessonFile } from '@/lib/files/links/lesson-file';
import type { Parsed } from '@/lib/quantity/parsed';
import { Button } from '../../parts/Button';
import { Dialog } from '../../parts/Dialog';
import { Field } from '../../parts/Field';
import { classResultsPath, workshopPath, yamlPath } from '../../parts/lesson-paths';
import { LinkWithCode } from '../../parts/LinkWithCode';
import { saveFile } from '../../parts/save-file';
import { textOfOwnLesson } from '../../keep/own-lesson-in-class';
import styles from './teach.module.css';

const TITLE = 'Questions of our class';

interface Made extends HomeLesson {
  /** The lesson behind the # of a link, as short as it goes. */
  readonly encoded: Parsed<string> | undefined;
}

/** Makes a lesson of what the class was asked; the engine and the check of lessons are fetched for it. */
async function made(asked: readonly Asked[]): Promise<Made> {
  const slugs = [...new Set(asked.flatMap(({ ask }) => ask.source?.lesson ?? []))];
  const texts = new Map<string, string>();
  for (const slug of slugs) {
    const answer = await fetch(yamlPath(slug)).catch(() => undefined);
    if (answer?.ok) texts.set(slug, await answer.text());
  }
  const [{ homeLesson, OWN_LESSON, termsIn }, { knownNames }] = await Promise.all([
    import('@/lib/class/home-lesson'),
    import('../../stage/known-names'),
  ]);
  const shelf = [...texts].map(([slug, text]) => ({ slug, text }));
  const own = textOfOwnLesson();
  if (own !== undefined) texts.set(OWN_LESSON, own);
  // What lessons of the shelf link to is known to be there.
  const known = knownNames([...texts.values()].flatMap(termsIn).map((id) => ({ id })));
  const lesson = homeLesson(asked, texts, { title: TITLE, known });
  const { text } = lesson;
  return { ...lesson, encoded: text === undefined ? undefined : shortestLink(text, shelf) };
}

/** What is in a lesson of the site, which whoever opens the link has too, need not be in the link. */
function shortestLink(text: string, shelf: readonly { readonly slug: string; readonly text: string }[]) {
  return [undefined, ...shelf]
    .map((near) => encodeLesson(text, near))
    .reduce((best, one) => (one.ok && (!best.ok || one.value.length < best.value.length) ? one : best));
}

/** What the class was asked, for those who can't be there: as a lesson in a link, a code or a file, handed in as lessons are. */
export function HomeQuestions({ asked, onClose }: { asked: readonly Asked[]; onClose: () => void }) {
  const [lesson, setLesson] = useState<Made>();
  const [failed, fail] = useState(false);
  const [site, setSite] = useState(location.origin);
  useEffect(() => {
    let gone = false;
    made(asked)
      .then((one) => !gone && setLesson(one))
      .catch(() => !gone && fail(true));
    return () => {
      gone = true;
    };
  }, [asked]);
  const { text, encoded, leftOut = [] } = lesson ?? {};
  const base = URL.canParse(site) ? new URL(site).origin : undefined;
  return (
    <Dialog open onClose={onClose} title="For those who can’t be there">
      <div className={styles.home}>
        <p>
          The same questions as a lesson to be taken at home. Nobody’s answers of this class are in it. What is answered
          there is handed in from its results, and opened by you under <a href={classResultsPath}>results of a class</a>
          , together with this link or its file.
        </p>
        {!lesson && !failed && <p role="status">The questions are put together…</p>}
        {failed && <p role="alert">They could not be put together just now. Close this and try again in a moment.</p>}
        {lesson && text === undefined && <p role="alert">None of these questions can be taken home.</p>}
        {text !== undefined && (
          <>
            <Field
              label="Where they open this site"
              hint={
                /^https?:\/\/(localhost|127\.|10\.|192\.168\.|172\.)/.test(site)
                  ? 'This address is found in this room alone. Put the one where you keep the site for your students, or send the file.'
                  : 'The site has to be kept there.'
              }
              value={site}
              error={base === undefined ? 'Write an address such as https://school.example' : undefined}
              onChange={(event) => setSite(event.target.value)}
            />
            {encoded?.ok && base !== undefined && (
              <LinkWithCode
                link={`${base}${workshopPath}#${encoded.value}`}
                instead="Send the link, or the lesson as a file."
              />
            )}
            {encoded && !encoded.ok && (
              <p role="alert">
                {encoded.what} {encoded.mend}
              </p>
            )}
            <Button
              icon="save"
              onClick={() => saveFile('halftime-questions-for-home.yaml', lessonFile(text), 'application/yaml')}
            >
              Save it as a file
            </Button>
          </>
        )}
        {leftOut.length > 0 && (
          <>
            <p>Left out:</p>
            <ul>
              {leftOut.map(({ title, why }, i) => (
                <li key={i}>
                  {title}. {why}
                </li>
              ))}
            </ul>
          </>
        )}
        <p>{cautions.general}</p>
      </div>
    </Dialog>
  );
}
