'use client';

import type { PreparedLesson, TryStep } from '../prepared';
import { Prose } from '../../parts/prose/Prose';
import { TryStage } from './stages';
import styles from './player.module.css';

export function TryStepView({ lesson, step }: { lesson: PreparedLesson; step: TryStep }) {
  return (
    <>
      <Prose html={step.html} />
      <div className={styles.stage}>
        <TryStage lesson={lesson} step={step} />
      </div>
    </>
  );
}
