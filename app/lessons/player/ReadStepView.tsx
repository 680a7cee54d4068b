'use client';

import type { PreparedLesson, ReadStep } from '../prepared';
import { Prose } from '../../parts/prose/Prose';
import { Stage } from './stages';
import styles from './player.module.css';

export function ReadStepView({ lesson, step }: { lesson: PreparedLesson; step: ReadStep }) {
  const { look } = step;
  return (
    <>
      <Prose html={step.html} />
      {look && (
        <div className={styles.stage}>
          <Stage script={lesson.scripts[look.script]!} show={look.show} atS={look.atS} untilS={look.untilS} />
        </div>
      )}
    </>
  );
}
