import dynamic from 'next/dynamic';
import { StageWaiting } from './StageWaiting';

/** What is needed only now and then. */
export const ClassLesson = dynamic(() => import('../class/ClassLesson').then((module) => module.ClassLesson), {
  ssr: false,
  loading: StageWaiting,
});
export const ResultsSheet = dynamic(() => import('../ResultsSheet').then((module) => module.ResultsSheet), {
  ssr: false,
  loading: StageWaiting,
});
export const PassStepOn = dynamic(() => import('../PassStepOn').then((module) => module.PassStepOn), { ssr: false });
export const LessonTools = dynamic(() => import('../LessonTools').then((module) => module.LessonTools), { ssr: false });
