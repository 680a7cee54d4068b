'use client';

import type { PreparedLesson, TryStep } from '../prepared';
import { TryStage } from './stages';
import { StepText } from './StepText';
import places from './window.module.css';

export function TryStepView({ lesson, step }: { lesson: PreparedLesson; step: TryStep }) {
  return (
    <>
      <div className={places.text} tabIndex={0}>
        <StepText step={step} />
      </div>
      <TryStage lesson={lesson} step={step} />
    </>
  );
}
