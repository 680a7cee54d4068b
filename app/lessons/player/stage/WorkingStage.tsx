'use client';

import { useMemo } from 'react';
import { atDayClock } from '@/lib/dive/day-clock';
import type { LessonScript } from '@/lib/lesson/lesson';
import { lessonWorld } from '@/lib/lesson/expression/lesson-world';
import { openedWorking } from '@/lib/lesson/questions/opened-working';
import { isRuleReading, UNIT_READING_IDS } from '@/lib/working/rules/unit-all';
import { WorkingBody } from '../../../parts/working/WorkingPanel';
import styles from './stage.module.css';

interface WorkingStageProps {
  script: LessonScript;
  reading: string;
  atS: number;
}

/** The working behind one reading at one moment, open on the page. */
export function WorkingStage({ script, reading, atS }: WorkingStageProps) {
  const id = UNIT_READING_IDS.find((one) => one === reading) ?? 'no-stop';
  const [working, when] = useMemo(() => {
    const { subject } = lessonWorld({ scripts: { script } }).about();
    return [openedWorking(subject, id, atS), atDayClock(subject.truth.timeline, atS)];
  }, [script, id, atS]);
  if (!working) return <p>This is not shown {when}.</p>;
  return (
    <section className={styles.working} aria-label={working.title}>
      <h3>
        Why? {working.title}, {when}
        {isRuleReading(id) && ', by a unit that is set right'}
      </h3>
      <WorkingBody working={working} folded />
    </section>
  );
}
