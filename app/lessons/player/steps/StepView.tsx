'use client';

import type { PreparedLesson, PreparedStep } from '../../prepared';
import { ProseList } from '../../../parts/prose/Prose';
import { ExplainStepView } from './ExplainStepView';
import { PredictStepView } from './PredictStepView';
import { ReadStepView } from './ReadStepView';
import { RunStepView } from './RunStepView';
import { CheckStepView } from '../stages';
import { StepText } from './StepText';
import { TryStepView } from './TryStepView';
import styles from './step.module.css';

/** One step, in its own way. */
export function StepView({ lesson, step }: { lesson: PreparedLesson; step: PreparedStep }) {
  switch (step.kind) {
    case 'read':
      return <ReadStepView lesson={lesson} step={step} />;
    case 'predict':
      return <PredictStepView lesson={lesson} step={step} />;
    case 'run':
      return <RunStepView lesson={lesson} step={step} />;
    case 'explain':
      return <ExplainStepView lesson={lesson} step={step} />;
    case 'try':
      return <TryStepView lesson={lesson} step={step} />;
    case 'check':
      return <CheckStepView lesson={lesson} step={step} />;
    case 'recap':
      return (
        <>
          <StepText step={step} />
          <ProseList lines={step.points} className={styles.points} />
        </>
      );
  }
}
