import dynamic from 'next/dynamic';
import { StageWaiting } from './StageWaiting';

/** Pictures, readings and playback of a dive; fetched with the first step that shows one. */
export const Stage = dynamic(() => import('./Stage').then((module) => module.Stage), { ssr: false, loading: StageWaiting });
export const RunStage = dynamic(() => import('./RunStage').then((module) => module.RunStage), { ssr: false, loading: StageWaiting });
export const TryStage = dynamic(() => import('./TryStage').then((module) => module.TryStage), { ssr: false, loading: StageWaiting });
export const WorkingStage = dynamic(() => import('./WorkingStage').then((module) => module.WorkingStage), { ssr: false, loading: StageWaiting });
