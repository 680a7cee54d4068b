'use client';

import type { PreparedLesson, RunStep } from '../prepared';
import { Prose } from '../../parts/prose/Prose';
import { RunStage } from './stages';
import styles from './player.module.css';

export function RunStepView({ lesson, step }: { lesson: PreparedLesson; step: RunStep }) {
  return (
    <>
      <Prose html={step.html} />
      <div className={styles.stage}>
        <RunStage script={lesson.scripts[step.script]!} step={step} />
      </div>
    </>
  );
}
