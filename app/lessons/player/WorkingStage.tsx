'use client';

import { useMemo } from 'react';
import { printClock } from '@/lib/quantity/duration';
import { sampleAt } from '@/lib/dive/timeline';
import type { LessonScript } from '@/lib/lesson/lesson';
import { subjectOfScript } from '@/lib/lesson/lesson-world';
import { DEFAULT_RULES } from '@/lib/rules/all';
import { READING_IDS, workingFor } from '@/lib/working/all';
import type { Working } from '@/lib/working/working';
import { WorkingBody } from '../../parts/working/WorkingPanel';
import styles from './stage.module.css';

interface WorkingStageProps {
  script: LessonScript;
  reading: string;
  atS: number;
}

/** The working behind one reading at one moment, open on the page. */
export function WorkingStage({ script, reading, atS }: WorkingStageProps) {
  const working = useMemo(() => workingAt(script, reading, atS), [script, reading, atS]);
  return (
    <section className={styles.working} aria-label={working.title}>
      <h3>
        Why? {working.title}, at {printClock(atS)}
      </h3>
      <WorkingBody working={working} />
    </section>
  );
}

function workingAt(script: LessonScript, reading: string, atS: number): Working {
  const { timeline, figures } = subjectOfScript(script.script, DEFAULT_RULES).truth;
  const id = READING_IDS.find((one) => one === reading) ?? 'no-stop';
  return workingFor(id, timeline, figures, sampleAt(timeline, atS));
}
