'use client';

import type { ExplainStep, PreparedLesson } from '../prepared';
import { Prose } from '../../parts/prose/Prose';
import { WorkingStage } from './stages';
import styles from './player.module.css';

export function ExplainStepView({ lesson, step }: { lesson: PreparedLesson; step: ExplainStep }) {
  return (
    <>
      <Prose html={step.html} />
      <div className={styles.stage}>
        <WorkingStage script={lesson.scripts[step.script]!} reading={step.reading} atS={step.atS} />
      </div>
    </>
  );
}
