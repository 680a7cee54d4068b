'use client';

import type { ExplainStep, PreparedLesson } from '../prepared';
import { WorkingStage } from './stages';
import { StepText } from './StepText';
import styles from './player.module.css';

export function ExplainStepView({ lesson, step }: { lesson: PreparedLesson; step: ExplainStep }) {
  return (
    <>
      <StepText step={step} />
      <div className={styles.stage}>
        <WorkingStage script={lesson.scripts[step.script]!} reading={step.reading} atS={step.atS} />
      </div>
    </>
  );
}
