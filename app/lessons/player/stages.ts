import dynamic from 'next/dynamic';
import { StageWaiting } from './StageWaiting';

/** Pictures, readings and playback of a dive; fetched with the first step that shows one. */
export const Stage = dynamic(() => import('./dive-stages').then((module) => module.Stage), { ssr: false, loading: StageWaiting });
export const RunStage = dynamic(() => import('./dive-stages').then((module) => module.RunStage), { ssr: false, loading: StageWaiting });
export const TryStage = dynamic(() => import('./dive-stages').then((module) => module.TryStage), { ssr: false, loading: StageWaiting });
export const WorkingStage = dynamic(() => import('./WorkingStage').then((module) => module.WorkingStage), { ssr: false, loading: StageWaiting });

/** What is needed only now and then. */
export const Presenter = dynamic(() => import('./Presenter').then((module) => module.Presenter), { ssr: false, loading: StageWaiting });
export const ResultsSheet = dynamic(() => import('./ResultsSheet').then((module) => module.ResultsSheet), { ssr: false, loading: StageWaiting });
export const LinkDialog = dynamic(() => import('./LinkDialog').then((module) => module.LinkDialog), { ssr: false });
