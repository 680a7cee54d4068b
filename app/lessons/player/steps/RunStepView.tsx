'use client';

import type { PreparedLesson, RunStep } from '../../prepared';
import { RunStage } from '../stages';
import { StepText } from './StepText';
import { TryOnDesk } from '../TryOnDesk';
import places from '../window.module.css';

export function RunStepView({ lesson, step }: { lesson: PreparedLesson; step: RunStep }) {
  return (
    <>
      <div className={places.text} tabIndex={0}>
        <StepText step={step} />
        {step.untilS === undefined && <TryOnDesk lesson={lesson} step={step} script={step.script} />}
      </div>
      <RunStage script={lesson.scripts[step.script]!} step={step} />
    </>
  );
}
