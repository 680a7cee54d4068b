import dynamic from 'next/dynamic';
import { StageWaiting } from './StageWaiting';

/** What is needed only now and then. */
export const Presenter = dynamic(() => import('./Presenter').then((module) => module.Presenter), {
  ssr: false,
  loading: StageWaiting,
});
export const ResultsSheet = dynamic(() => import('./ResultsSheet').then((module) => module.ResultsSheet), {
  ssr: false,
  loading: StageWaiting,
});
export const LinkDialog = dynamic(() => import('./LinkDialog').then((module) => module.LinkDialog), { ssr: false });
