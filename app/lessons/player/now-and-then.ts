import dynamic from 'next/dynamic';
import { StageWaiting } from './StageWaiting';

/** What is needed only now and then. */
export const ClassLesson = dynamic(() => import('./ClassLesson').then((module) => module.ClassLesson), {
  ssr: false,
  loading: StageWaiting,
});
export const ResultsSheet = dynamic(() => import('./ResultsSheet').then((module) => module.ResultsSheet), {
  ssr: false,
  loading: StageWaiting,
});
export const LinkDialog = dynamic(() => import('./LinkDialog').then((module) => module.LinkDialog), { ssr: false });
export const LessonTools = dynamic(() => import('./LessonTools').then((module) => module.LessonTools), { ssr: false });
