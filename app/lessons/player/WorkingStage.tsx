'use client';

import { useMemo } from 'react';
import { printClock } from '@/lib/quantity/duration';
import type { LessonScript } from '@/lib/lesson/lesson';
import { lessonWorld } from '@/lib/lesson/expression/lesson-world';
import { openedWorking } from '@/lib/lesson/questions/opened-working';
import { isRuleReading, UNIT_READING_IDS } from '@/lib/working/rules/unit-all';
import { WorkingBody } from '../../parts/working/WorkingPanel';
import styles from './stage.module.css';

interface WorkingStageProps {
  script: LessonScript;
  reading: string;
  atS: number;
}

/** The working behind one reading at one moment, open on the page. */
export function WorkingStage({ script, reading, atS }: WorkingStageProps) {
  const id = UNIT_READING_IDS.find((one) => one === reading) ?? 'no-stop';
  const working = useMemo(
    () => openedWorking(lessonWorld({ scripts: { script } }).about().subject, id, atS),
    [script, id, atS],
  );
  if (!working) return <p>This is not shown at {printClock(atS)}.</p>;
  return (
    <section className={styles.working} aria-label={working.title}>
      <h3>
        Why? {working.title}, at {printClock(atS)}
        {isRuleReading(id) && ', by a unit that is set right'}
      </h3>
      <WorkingBody working={working} />
    </section>
  );
}
