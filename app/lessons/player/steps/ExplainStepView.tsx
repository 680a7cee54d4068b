'use client';

import type { ExplainStep, PreparedLesson } from '../../prepared';
import { WorkingStage } from '../stages';
import { StepText } from './StepText';
import { TryOnDesk } from '../TryOnDesk';
import styles from './step.module.css';

export function ExplainStepView({ lesson, step }: { lesson: PreparedLesson; step: ExplainStep }) {
  return (
    <>
      <div className={styles.words}>
        <StepText step={step} />
      </div>
      <div className={styles.opened}>
        <WorkingStage script={lesson.scripts[step.script]!} reading={step.reading} atS={step.atS} />
        <TryOnDesk lesson={lesson} step={step} script={step.script} />
      </div>
    </>
  );
}
