import dynamic from 'next/dynamic';
import { afterPaint } from '../../parts/after-paint';
import { StageWaiting } from './stage/StageWaiting';

/** Pictures, readings and playback of a dive; fetched with the first step that shows one. */
export const Stage = afterPaint(
  dynamic(() => import('./stage/dive-stages').then((module) => module.Stage), { ssr: false, loading: StageWaiting }),
  StageWaiting,
);
export const RunStage = afterPaint(
  dynamic(() => import('./stage/dive-stages').then((module) => module.RunStage), { ssr: false, loading: StageWaiting }),
  StageWaiting,
);
export const TryStage = afterPaint(
  dynamic(() => import('./stage/dive-stages').then((module) => module.TryStage), { ssr: false, loading: StageWaiting }),
  StageWaiting,
);
export const WorkingStage = afterPaint(
  dynamic(() => import('./stage/WorkingStage').then((module) => module.WorkingStage), {
    ssr: false,
    loading: StageWaiting,
  }),
  StageWaiting,
);
export const CheckStepView = dynamic(() => import('./steps/CheckStepView').then((module) => module.CheckStepView), {
  ssr: false,
  loading: StageWaiting,
});
