import { useMemo, useState } from 'react';
import { cautions as every } from '@/content/cautions';
import { isOwnSlug } from '@/lib/files/links/own-lesson';
import { NOT_PREDICTED } from '@/lib/lesson/progress';
import type { Parsed } from '@/lib/quantity/parsed';
import { AlonePage, NothingAlone } from '../../parts/alone/AlonePage';
import { Button } from '../../parts/Button';
import { lessonPath } from '../../parts/lesson-paths';
import { usePreferences } from '../../parts/preferences';
import { UnitsFrame } from '../../parts/prose/UnitsFrame';
import { lessonIn } from '../in-units';
import { HandIn } from '../player/HandIn';
import { PredictStepView } from '../player/steps/PredictStepView';
import { useLessonProgress } from '../player/progress-store';
import { RunStepView } from '../player/steps/RunStepView';
import type { OpenedStep } from './opened-step';
import { stepsOf } from './steps-of-page';
import places from '../player/window.module.css';
import styles from './step-alone.module.css';

/** A question of a lesson on a page of its own: answered first, then seen and read, then run, and handed in. */
export function StepAlone({ opened, inFile }: { opened: Parsed<OpenedStep>; inFile: boolean }) {
  return opened.ok ? (
    <Opened {...opened.value} inFile={inFile} />
  ) : (
    <NothingAlone title="No question to show" {...opened} />
  );
}

function Opened({ lesson: given, site, inFile }: OpenedStep & { inFile: boolean }) {
  const units = usePreferences((state) => state.units);
  const lesson = useMemo(() => lessonIn(given, units), [given, units]);
  const { question, run } = stepsOf(lesson);
  const { slug, title, cautions } = lesson;
  const { given: answers, looked } = useLessonProgress(slug).predictions[question.id] ?? NOT_PREDICTED;
  const seen = answers.length > 0 || looked;
  const [handing, setHanding] = useState(false);
  return (
    <AlonePage
      title={question.title}
      of={title}
      onSite={inFile || isOwnSlug(slug) ? undefined : lessonPath(slug, question.id)}
      foot={<p>Nothing you answer is kept here: it is gone when this page is closed, unless you hand it in.</p>}
    >
      <UnitsFrame>
        <div className={styles.steps}>
          {cautions
            .filter((caution) => caution !== every.unknown)
            .map((caution) => (
              <p key={caution} role="note" className={styles.caution}>
                {caution}
              </p>
            ))}
          <section aria-label="The question" className={styles.question}>
            <PredictStepView key={units} lesson={lesson} step={question} />
          </section>
          {run && !seen && (
            <section aria-labelledby="run" className={styles.later}>
              <h2 id="run">{run.title}</h2>
              <p>This dive can be run once you have answered: it shows what is asked.</p>
            </section>
          )}
          {run && seen && (
            <div className={`${places.body} ${styles.stage}`}>
              <section aria-labelledby="run" className={places.window} data-kind="run">
                <h2 id="run">{run.title}</h2>
                <RunStepView key={units} lesson={lesson} step={run} />
              </section>
            </div>
          )}
          {seen && (
            <div className={`${styles.handIn} unprinted`}>
              <Button kind="primary" icon="link" onClick={() => setHanding(true)}>
                Hand in
              </Button>
              <p>Your answers for whoever teaches: as a file, a link or a code.</p>
            </div>
          )}
        </div>
      </UnitsFrame>
      {handing && <HandIn slug={slug} title={question.title} alone={{ site }} onClose={() => setHanding(false)} />}
    </AlonePage>
  );
}
