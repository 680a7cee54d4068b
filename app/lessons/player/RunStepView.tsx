'use client';

import type { PreparedLesson, RunStep } from '../prepared';
import { RunStage } from './stages';
import { StepText } from './StepText';
import places from './window.module.css';

export function RunStepView({ lesson, step }: { lesson: PreparedLesson; step: RunStep }) {
  return (
    <>
      <div className={places.text}>
        <StepText step={step} />
      </div>
      <RunStage script={lesson.scripts[step.script]!} step={step} />
    </>
  );
}
