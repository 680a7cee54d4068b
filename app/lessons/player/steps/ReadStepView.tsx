'use client';

import type { PreparedLesson, ReadStep } from '../../prepared';
import { Stage } from '../stages';
import { StepText } from './StepText';
import { TryOnDesk } from '../TryOnDesk';
import styles from './step.module.css';
import places from '../window.module.css';

export function ReadStepView({ lesson, step }: { lesson: PreparedLesson; step: ReadStep }) {
  const { look } = step;
  return (
    <>
      <div className={look ? places.text : styles.words} tabIndex={look && 0}>
        <StepText step={step} />
        {look && look.untilS === undefined && <TryOnDesk lesson={lesson} step={step} script={look.script} />}
      </div>
      {look && <Stage script={lesson.scripts[look.script]!} show={look.show} atS={look.atS} untilS={look.untilS} />}
    </>
  );
}
