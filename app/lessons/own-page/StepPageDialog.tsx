'use client';

import { useEffect, useMemo, useState } from 'react';
import { cautions } from '@/content/cautions';
import { ownSlug } from '@/lib/files/links/own-lesson';
import type { KnownNames } from '@/lib/lesson/questions/known-names';
import { FrameLine } from '../../parts/alone/FrameLine';
import { PAGE_UNFETCHED, savePage } from '../../parts/alone/save-page';
import { Button } from '../../parts/Button';
import { Dialog } from '../../parts/Dialog';
import { termsPath } from '../../parts/lesson-paths';
import { usePreferences } from '../../parts/preferences';
import { Segmented } from '../../parts/Segmented';
import { useStatus } from '../../parts/status';
import { knownNames } from '../../stage/known-names';
import { fetchTerms } from '../glossary/fetch-terms';
import { StageWaiting } from '../player/stage/StageWaiting';
import styles from '../player/player.module.css';
import { useLessonText } from '../use-lesson-text';
import type { Asked } from '../workshop/editor/answer-to';
import type { PackedStep, RunOnPage } from './pack-step';
import { usePackedStep } from './use-packed-step';

const WHAT = [
  { value: 'run', label: 'With the run after it' },
  { value: 'alone', label: 'The question alone' },
] as const;

interface StepPageProps {
  slug: string;
  /** The lesson's text, where it is not on the shelf. */
  own?: string | undefined;
  /** The question, by its step's id. */
  step: string;
  onClose: () => void;
}

/** A question of a lesson as one file, or as the line for a frame in a course page. */
export function StepPageDialog({ slug, own, step, onClose }: StepPageProps) {
  const units = usePreferences((state) => state.units);
  const [what, choose] = useState<(typeof WHAT)[number]['value']>('run');
  const { text, why: unfetched } = useLessonText(slug, own, 'Open this again in a moment.');
  const known = useKnownNames();
  const why = unfetched ?? (typeof known === 'string' ? known : undefined);
  const asked = useMemo(
    (): Asked | undefined =>
      text === undefined || known === undefined || typeof known === 'string'
        ? undefined
        : {
            text,
            known,
            slug: own === undefined ? slug : ownSlug(own),
            page: { step, run: what === 'run', site: location.origin, units },
          },
    [text, known, own, slug, step, what, units],
  );
  const packed = usePackedStep(asked);
  return (
    <Dialog open onClose={onClose} title="This question as a page of its own">
      <div className={styles.linkDialog}>
        <p>{cautions.general}</p>
        {why !== undefined ? (
          <p role="alert">{why}</p>
        ) : !packed ? (
          <StageWaiting />
        ) : packed.ok ? (
          <Made packed={packed.value} what={what} choose={choose} />
        ) : (
          <p role="alert">
            {packed.what} {packed.mend}
          </p>
        )}
      </div>
    </Dialog>
  );
}

interface MadeProps {
  packed: PackedStep;
  what: (typeof WHAT)[number]['value'];
  choose: (what: (typeof WHAT)[number]['value']) => void;
}

function Made({ packed, what, choose }: MadeProps) {
  const say = useStatus((state) => state.say);
  const { title, fragment, run } = packed;
  return (
    <>
      {run && (
        <>
          <Segmented label="What is on it" segments={WHAT} value={what} onChange={choose} />
          {what === 'run' && <RunWords {...run} />}
        </>
      )}
      <h3>As one file</h3>
      <p>
        The learner opens it without this site and without a network, answers, sees what the model says and reads why,
        and hands the answer in as a file, a link or a code. The answer stands nowhere in it to be read before; who
        knows how can unpack it, so it is for learning and not for marks.
      </p>
      <Button kind="primary" icon="save" onClick={() => void savePage(packed).then(say, () => say(PAGE_UNFETCHED))}>
        Save the question as a page of its own
      </Button>
      <h3>In a course page</h3>
      <FrameLine title={title} fragment={fragment} shows="the question, to be answered there" />
    </>
  );
}

function RunWords({ title, between, left }: RunOnPage) {
  const named = (titles: readonly string[]) => titles.map((one) => `“${one}”`).join(', ');
  return (
    <p>
      “{title}” opens once the question is answered.
      {between.length > 0 && ` It also shows what the lesson asks in ${named(between)}.`}
      {left > 0 &&
        ` ${left === 1 ? 'One of its pictures is' : `${left} of its pictures are`} too heavy for a page of its own and left to the lesson.`}
    </p>
  );
}

/** What a lesson may name: links to terms are checked too. Undefined until the terms are here, words where they can't be had. */
function useKnownNames(): KnownNames | string | undefined {
  const [known, setKnown] = useState<KnownNames | string>();
  useEffect(() => {
    let here = true;
    fetchTerms(termsPath).then(
      (terms) => here && setKnown(knownNames(Object.keys(terms).map((id) => ({ id })))),
      () => here && setKnown('The glossary can’t be fetched just now. Open this again in a moment.'),
    );
    return () => {
      here = false;
    };
  }, []);
  return known;
}
