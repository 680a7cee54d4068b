import type { KnownNames } from '@/lib/lesson/questions/known-names';
import { takeToClass } from '../../keep/own-lesson-in-class';
import { OWN_IN_CLASS, teachPath } from '../../parts/lesson-paths';
import { plainAsks } from '../class-asks';
import { prepareText } from './looks/prepare-text';

/** Takes a lesson to class: its questions are listed there beside those of the shelf. False where it has faults or asks nothing. */
export function toClass(text: string, known: KnownNames): boolean {
  const lesson = prepareText({ text, slug: OWN_IN_CLASS, known });
  const questions = lesson ? plainAsks(lesson) : [];
  if (!lesson || questions.length === 0) return false;
  takeToClass({ title: lesson.title, text, questions });
  window.location.assign(teachPath(OWN_IN_CLASS));
  return true;
}
