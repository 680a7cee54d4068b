'use client';

import { Prose } from '../../../parts/prose/Prose';
import type { PreparedLesson, TryStep } from '../../prepared';
import { TryStage } from '../stages';
import places from '../window.module.css';

export function TryStepView({ lesson, step }: { lesson: PreparedLesson; step: TryStep }) {
  return (
    <>
      <div className={places.text} tabIndex={0}>
        <Prose html={step.html} />
      </div>
      <TryStage lesson={lesson} step={step} />
    </>
  );
}
